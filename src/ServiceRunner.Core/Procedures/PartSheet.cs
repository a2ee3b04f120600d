using ServiceRunner.Core.Quantities;

namespace ServiceRunner.Core.Procedures;

/// <summary>
/// The sheet of a part to be made: what each of its sizes is reckoned from. What was measured in a job is joined to it by
/// <see cref="Jobs.MakingSheet"/>.
/// </summary>
/// <param name="Title">What stands above it.</param>
/// <param name="Part">The part to be made, whose old one is kept; null if the procedure names none.</param>
/// <param name="Lines">Its sizes, in the order in which they are written.</param>
public sealed record PartSheet(string Title, Placed<string>? Part, IReadOnlyList<PartSheetLine> Lines);

/// <summary>A size of the part to be made.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">What it is taken from: <see cref="MeasureFacet.What"/> of a measure of the procedure.</param>
/// <param name="Less">What is taken off that, likewise; null if nothing is.</param>
public sealed record PartSheetLine(string Name, Placed<string> From, Placed<string>? Less);
