using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>Lists every arrangement of so many pieces at a plane's places that comes near a vector.</summary>
internal sealed class DiscretePlane
{
    private const int MostListed = 1_500_000;

    private readonly ChoicePlane _plane;
    private readonly SearchBudget _budget;
    private readonly double _mostGrams;
    private readonly double[] _places;
    private readonly Complex[] _directions;
    private readonly double[] _arms;
    private readonly bool[]?[] _allowed;
    private readonly bool _sizes;

    public DiscretePlane(ChoicePlane plane, double mostGrams, SearchBudget budget)
    {
        _plane = plane;
        _budget = budget;
        _mostGrams = mostGrams;
        _places = [.. plane.Places!.Select(double.DegreesToRadians)];
        _directions = [.. _places.Select(a => Complex.FromPolarCoordinates(1, a))];
        _arms = [.. plane.Types.All.Select(t => t.MassGrams * plane.RadiusMillimetres)];
        _sizes = plane.HasSizes;
        _allowed = [.. plane.Types.All.Select(t => plane.IsTooLong(t)
            ? new bool[_places.Length]
            : plane.Forbidden.Count == 0 ? null : (bool[])[.. _places.Select(plane.Allowed(t).Contains)])];
    }

    /// <summary>Every arrangement whose vector lies within a distance of another.</summary>
    public Arrangements Near(Complex centre, double within, int pieces)
    {
        var list = new Arrangements(_plane, pieces);
        if (pieces == 0)
        {
            if (centre.Magnitude <= within)
            {
                list.Add(Complex.Zero, 0, [], []);
            }

            return list;
        }

        // Two strips at one place are one strip; two clips there are two, where nobody gave their length.
        list.MissingFromGrams = StripsAreBounded(pieces, within) ? double.PositiveInfinity : _plane.Types.HeaviestStripGrams;
        if (_arms.Length > 0)
        {
            Next(list, new Search(centre, within), new int[pieces], new int[pieces], 0, Complex.Zero, 0);
        }

        return list;
    }

    private readonly record struct Search(Complex Centre, double Within);

    private void Next(Arrangements list, Search search, int[] places, int[] types, int at, Complex sum, double mass)
    {
        var left = search.Centre - sum;
        var distance = left.Magnitude;
        var rest = places.Length - at;
        if (distance - search.Within > rest * _arms[^1])
        {
            return;
        }

        var firstPlace = at == 0 ? 0 : places[at - 1];
        if (rest == 1)
        {
            Last(list, search, places, types, left, distance, firstPlace, mass);
            return;
        }

        for (var place = firstPlace; place < _places.Length; place++)
        {
            for (var type = 0; type < _arms.Length; type++)
            {
                if (!_budget.Spend(1) || list.Count >= MostListed)
                {
                    list.MissingFromGrams = 0;
                    return;
                }

                if (mass + _plane.Types.All[type].MassGrams > _mostGrams)
                {
                    break;
                }

                if (Fits(places, types, at, place, type))
                {
                    (places[at], types[at]) = (place, type);
                    Next(list, search, places, types, at + 1, sum + (_arms[type] * _directions[place]), mass + _plane.Types.All[type].MassGrams);
                }
            }
        }
    }

    /// <summary>The last piece: only masses and places that can close the gap are looked at.</summary>
    private void Last(Arrangements list, Search search, int[] places, int[] types, Complex left, double distance, int firstPlace, double mass)
    {
        var at = places.Length - 1;
        for (var type = FirstArm(distance - search.Within); type < _arms.Length && _arms[type] <= distance + search.Within; type++)
        {
            if (mass + _plane.Types.All[type].MassGrams > _mostGrams)
            {
                break;
            }

            var (low, high) = Window(left.Phase, distance, _arms[type], search.Within);
            foreach (var (from, to) in PlacesIn(low, high))
            {
                for (var place = Math.Max(from, firstPlace); place < to; place++)
                {
                    if (!_budget.Spend(1) || list.Count >= MostListed)
                    {
                        list.MissingFromGrams = 0;
                        return;
                    }

                    var miss = left - (_arms[type] * _directions[place]);
                    if (miss.Magnitude <= search.Within && Fits(places, types, at, place, type))
                    {
                        (places[at], types[at]) = (place, type);
                        if (_plane.Counts is null || ChoicePlane.Enough(_plane.Counts, types.Select(t => _plane.Types.All[t])))
                        {
                            list.Add(search.Centre - miss, mass + _plane.Types.All[type].MassGrams, places, types);
                        }
                    }
                }
            }
        }
    }

    private int FirstArm(double least)
    {
        var (low, high) = (0, _arms.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_arms[middle] < least)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    /// <summary>The angles at which an arm ends within a distance of a point, as an interval that may pass a whole turn.</summary>
    private static (double Low, double High) Window(double direction, double distance, double arm, double within)
    {
        if (distance == 0 || distance + arm <= within)
        {
            return (0, Math.Tau);
        }

        var cosine = ((arm * arm) + (distance * distance) - (within * within)) / (2 * arm * distance);
        if (cosine <= -1)
        {
            return (0, Math.Tau);
        }

        var half = Math.Acos(Math.Min(cosine, 1)) + 1e-9;
        return (direction - half, direction + half);
    }

    /// <summary>The ranges of place numbers inside an interval of angles.</summary>
    private IEnumerable<(int From, int To)> PlacesIn(double low, double high)
    {
        if (high - low >= Math.Tau)
        {
            return [(0, _places.Length)];
        }

        var from = AllowedArcs.Turn(low);
        var to = from + (high - low);
        return to < Math.Tau
            ? [(Index(from), Index(to))]
            : [(0, Index(to - Math.Tau)), (Index(from), _places.Length)];
    }

    private int Index(double angle)
    {
        var i = Array.BinarySearch(_places, angle);
        return i < 0 ? ~i : i;
    }

    private bool Fits(int[] places, int[] types, int at, int place, int type)
    {
        if (_allowed[type] is { } allowed && !allowed[place])
        {
            return false;
        }

        for (var i = 0; i < at; i++)
        {
            if (places[i] == place && (_plane.Kind == WeightKind.Adhesive || types[i] > type))
            {
                return false;
            }

            if (_sizes && !_plane.Clear(_plane.Types.All[types[i]], _places[places[i]], _plane.Types.All[type], _places[place]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>
    /// True where no strip heavier than those listed could come near: one strip never, and two only where their places nearly face each other.
    /// </summary>
    private bool StripsAreBounded(int pieces, double within)
    {
        var heaviest = _plane.Types.HeaviestStripGrams * _plane.RadiusMillimetres;
        if (double.IsPositiveInfinity(heaviest))
        {
            return true;
        }

        var needed = _plane.Need.Magnitude + within;
        if (pieces == 1)
        {
            return heaviest >= needed;
        }

        if (pieces > 2)
        {
            return false;
        }

        // Two strips with an angle between: the heavier one's part across the other is at most what is needed. Two that face each other
        // exactly make what a lighter pair makes, or one strip, where the lightest segment divides all others.
        var least = 1.0;
        for (var i = 0; i < _places.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var sine = Math.Abs(Math.Sin(_places[i] - _places[j]));
                if (sine > 1e-9)
                {
                    least = Math.Min(least, sine);
                }
                else if (!LightestDividesAll())
                {
                    return false;
                }
            }
        }

        return heaviest >= needed / least;
    }

    private bool LightestDividesAll()
    {
        var lightest = _plane.Types.All.Count > 0 ? _plane.Types.All[0].MassGrams : 1;
        return _plane.Counts is null && _plane.Types.All.All(t => Math.Abs((t.MassGrams / lightest) - Math.Round(t.MassGrams / lightest)) < 1e-9);
    }
}
