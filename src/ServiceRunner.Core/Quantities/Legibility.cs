namespace ServiceRunner.Core.Quantities;

/// <summary>
/// How large letters must be to be read from a distance. A letter is measured by the height of its capitals and by the
/// angle that this height fills in the eye, in minutes of arc (60 to a degree).
/// </summary>
public static class Legibility
{
    /// <summary>The least height, in minutes of arc. ISO 9241-3 and -303: "minimum character height shall be 16".</summary>
    public const double LeastArcMinutes = 16;

    /// <summary>Where the preferred heights begin, in minutes of arc. ISO 9241-3 and -303: "20 to 22 minutes of arc are preferred".</summary>
    public const double PreferredArcMinutes = 20;

    /// <summary>Where the preferred heights end, in minutes of arc; the same place.</summary>
    public const double AmplePreferredArcMinutes = 22;

    /// <summary>The most, in minutes of arc. NUREG-0700. We take it to be for text that is read line by line; a short imperative may be larger.</summary>
    public const double MostArcMinutes = 24;

    /// <summary>The height of a capital that fills an angle at a distance.</summary>
    /// <param name="distanceMetres">From the eye to the screen, metres; above 0.</param>
    /// <param name="arcMinutes">Minutes of arc; above 0. The formula takes the arc for its chord: below 1° that is less than 0.01 % off.</param>
    /// <returns>Millimetres.</returns>
    public static double CapHeightMillimetres(double distanceMetres, double arcMinutes) =>
        6.283 * (distanceMetres * 1000) * arcMinutes / 21600; // NUREG-0700: Height = 6.283·D·MA/21600, height and D in one unit

    /// <summary>The angle that a capital fills: the other way round.</summary>
    /// <param name="distanceMetres">From the eye to the screen, metres; above 0.</param>
    /// <param name="capHeightMillimetres">Height of a capital, millimetres; above 0.</param>
    /// <returns>Minutes of arc.</returns>
    public static double ArcMinutes(double distanceMetres, double capHeightMillimetres) =>
        capHeightMillimetres * 21600 / (6.283 * (distanceMetres * 1000)); // NUREG-0700, solved for MA

    /// <summary>The rule of thumb of the FAA: a two-hundredth of the distance. It lies between the least and the preferred.</summary>
    /// <param name="distanceMetres">From the eye to the screen, metres; above 0.</param>
    /// <returns>Millimetres.</returns>
    public static double ThumbMillimetres(double distanceMetres) => distanceMetres * 1000 / 200; // FAA: height = distance / 200
}
