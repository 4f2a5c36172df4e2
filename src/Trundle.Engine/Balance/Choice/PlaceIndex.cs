using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>Finds arrangements by where their vector lies.</summary>
internal sealed class PlaceIndex
{
    private readonly Arrangements _list;
    private readonly Complex _origin;
    private readonly double _cell;
    private readonly Dictionary<(long, long), List<int>> _cells = [];

    public PlaceIndex(Arrangements list, Complex origin, double cell)
    {
        (_list, _origin, _cell) = (list, origin, cell);
        for (var i = 0; i < list.Count; i++)
        {
            var d = list.Vectors[i] - origin;
            var key = (Cell(d.Real), Cell(d.Imaginary));
            if (!_cells.TryGetValue(key, out var members))
            {
                _cells[key] = members = [];
            }

            members.Add(i);
        }
    }

    /// <summary>Every arrangement whose vector less the origin lies within a distance of another, and a few more.</summary>
    public IEnumerable<int> Near(Complex centre, double within)
    {
        var (x0, x1) = (Cell(centre.Real - within), Cell(centre.Real + within));
        var (y0, y1) = (Cell(centre.Imaginary - within), Cell(centre.Imaginary + within));
        if (double.IsPositiveInfinity(within) || (double)(x1 - x0 + 1) * (y1 - y0 + 1) > _cells.Count)
        {
            foreach (var ((x, y), members) in _cells)
            {
                if (double.IsPositiveInfinity(within) || (x >= x0 && x <= x1 && y >= y0 && y <= y1))
                {
                    foreach (var i in members)
                    {
                        yield return i;
                    }
                }
            }

            yield break;
        }

        for (var x = x0; x <= x1; x++)
        {
            for (var y = y0; y <= y1; y++)
            {
                if (_cells.TryGetValue((x, y), out var members))
                {
                    foreach (var i in members)
                    {
                        yield return i;
                    }
                }
            }
        }
    }

    private long Cell(double value) => (long)Math.Floor(Math.Clamp(value / _cell, -1e15, 1e15));
}
