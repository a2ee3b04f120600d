using ServiceRunner.Screens;

namespace ServiceRunner.Terminal;

/// <summary>What the terminal shows now, as far as is known, so that only what differs is sent.</summary>
internal sealed class ShownCells
{
    private Sheet.Cell?[] _cells = [];
    private int _width;

    /// <summary>True when a sheet is not what is shown.</summary>
    public bool Differs(Sheet sheet)
    {
        if (!Fits(sheet)) return true;
        for (int y = 0; y < sheet.Height; y++)
            for (int x = 0; x < sheet.Width; x++)
                if (_cells[y * _width + x] != sheet[x, y]) return true;
        return false;
    }

    /// <summary>The places where a sheet differs, which from now on count as shown.</summary>
    public IEnumerable<(int X, int Y)> Show(Sheet sheet)
    {
        if (!Fits(sheet))
        {
            _width = sheet.Width;
            _cells = new Sheet.Cell?[sheet.Width * sheet.Height];
        }
        for (int y = 0; y < sheet.Height; y++)
            for (int x = 0; x < sheet.Width; x++)
            {
                if (_cells[y * _width + x] == sheet[x, y]) continue;
                _cells[y * _width + x] = sheet[x, y];
                yield return (x, y);
            }
    }

    private bool Fits(Sheet sheet) => _width == sheet.Width && _cells.Length == sheet.Width * sheet.Height;

    /// <summary>Something else wrote over the terminal.</summary>
    public void Forget() => Array.Clear(_cells);

    /// <summary>Something else wrote over some columns of a row.</summary>
    public void Forget(int x, int y, int columns)
    {
        for (int i = Math.Max(0, x); i < Math.Min(_width, x + columns); i++)
            if (y * _width + i < _cells.Length) _cells[y * _width + i] = null;
    }
}
