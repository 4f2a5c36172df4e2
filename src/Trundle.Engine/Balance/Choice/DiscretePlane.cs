using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>Lists every arrangement of so many pieces at a plane's places that comes near a vector.</summary>
internal sealed class DiscretePlane
{
    private const int MostListed = 1_500_000;

    // Up to so many places, every two are solved for their masses; beyond, the last place is found by its angle.
    private const int FewPlaces = 48;

    private readonly ChoicePlane _plane;
    private readonly SearchBudget _budget;
    private readonly double[] _angles;
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _arms;
    private readonly double[] _grams;
    private readonly double[] _halves;
    private readonly bool[]?[] _allowed;
    private readonly bool _sizes;
    private readonly bool _oneEach;

    private StripBound? _bound;
    private Arrangements _list;
    private Complex _centre;
    private Asked _asked;
    private int[] _places = [];
    private int[] _types = [];

    public DiscretePlane(ChoicePlane plane, SearchBudget budget)
    {
        _plane = plane;
        _budget = budget;
        _list = new Arrangements(plane, 0);
        _angles = [.. plane.Places!.Select(double.DegreesToRadians)];
        _x = [.. _angles.Select(Math.Cos)];
        _y = [.. _angles.Select(Math.Sin)];
        _grams = [.. plane.Types.All.Select(t => t.MassGrams)];
        _arms = [.. _grams.Select(g => g * plane.RadiusMillimetres)];
        _halves = [.. plane.Types.All.Select(plane.HalfAngle)];
        _sizes = plane.HasSizes;
        _oneEach = plane.Kind == WeightKind.Adhesive;
        _allowed = [.. plane.Types.All.Select(t => plane.IsTooLong(t)
            ? new bool[_angles.Length]
            : plane.Forbidden.Count == 0 ? null : (bool[])[.. _angles.Select(plane.Allowed(t).Contains)])];
    }

    /// <summary>Every arrangement whose vector lies as near to another as is asked.</summary>
    public Arrangements Near(Complex centre, Asked asked, int pieces)
    {
        var list = new Arrangements(_plane, pieces);
        if (pieces > _plane.MostPieces)
        {
            return list;
        }

        if (pieces == 0)
        {
            if (centre.Magnitude <= asked.For(0))
            {
                list.Add(Complex.Zero, 0, [], []);
            }

            return list;
        }

        // Two strips at one place are one strip; two clips there are two, where nobody gave their length.
        list.MissingFromGrams = _plane.Types.HeaviestStripGrams >= asked.MostGrams || (_bound ??= new StripBound(_plane)).Holds(pieces, centre, asked.For(0))
            ? double.PositiveInfinity
            : _plane.Types.HeaviestStripGrams;
        if (_arms.Length > 0)
        {
            (_list, _centre, _asked, _places, _types) = (list, centre, asked, new int[pieces], new int[pieces]);
            Next(0, centre.Real, centre.Imaginary, 0);
        }

        return list;
    }

    /// <summary>How near the need any number of pieces of a mass together can come; null where the work was used up, or some strips are not listed.</summary>
    public double? LeastLeft(double mostGrams)
    {
        if (_arms.Length == 0)
        {
            return _plane.Need.Magnitude;
        }

        if (_plane.Types.HeaviestStripGrams < mostGrams)
        {
            return null;
        }

        var pieces = Math.Min(_plane.DrawerPieces, (int)Math.Min(mostGrams / _grams[0], 1000));
        (_places, _types) = (new int[pieces], new int[pieces]);
        var least = _plane.Need.Magnitude;
        Nearer(0, _plane.Need.Real, _plane.Need.Imaginary, mostGrams, ref least);
        return _budget.IsLeft ? least : null;
    }

    private void Nearer(int at, double leftX, double leftY, double grams, ref double least)
    {
        var distance = Math.Sqrt((leftX * leftX) + (leftY * leftY));
        least = Math.Min(least, distance);
        var first = at == 0 ? 0 : _places[at - 1] + (_oneEach ? 1 : 0);
        if (at == _places.Length || distance - (grams * _plane.RadiusMillimetres * Towards(first, leftX / distance, leftY / distance)) >= least)
        {
            return;
        }

        for (var place = first; place < _x.Length; place++)
        {
            for (var type = _arms.Length - 1; type >= 0; type--)
            {
                if (_grams[type] > grams + 1e-9)
                {
                    continue;
                }

                if (!_budget.Spend(1))
                {
                    return;
                }

                if (Fits(at, place, type))
                {
                    (_places[at], _types[at]) = (place, type);
                    if (ChoicePlane.Enough(_plane.Counts, _types.Take(at + 1).Select(t => _plane.Types.All[t])))
                    {
                        Nearer(at + 1, leftX - (_arms[type] * _x[place]), leftY - (_arms[type] * _y[place]), grams - _grams[type], ref least);
                    }
                }
            }
        }
    }

    private void Next(int at, double leftX, double leftY, double mass)
    {
        var rest = _places.Length - at;
        var within = _asked.For(mass + (rest * _grams[0]));
        if (within < 0)
        {
            return;
        }

        var first = at == 0 ? 0 : _places[at - 1];
        var most = Math.Min(rest * _arms[^1], (_asked.MostGrams - mass) * _plane.RadiusMillimetres);
        var distance = Math.Sqrt((leftX * leftX) + (leftY * leftY));
        if (distance - within > most || (_x.Length <= FewPlaces && distance - within > most * Towards(first, leftX / distance, leftY / distance)))
        {
            return;
        }

        if (rest == 1)
        {
            Last(at, first, leftX, leftY, distance, mass);
            return;
        }

        if (rest == 2 && _x.Length <= FewPlaces)
        {
            LastTwo(at, first, leftX, leftY, within, mass);
            return;
        }

        for (var place = first; place < _x.Length; place++)
        {
            for (var type = 0; type < _arms.Length && mass + _grams[type] + ((rest - 1) * _grams[0]) <= _asked.MostGrams; type++)
            {
                if (!Spend())
                {
                    return;
                }

                if (Fits(at, place, type))
                {
                    (_places[at], _types[at]) = (place, type);
                    Next(at + 1, leftX - (_arms[type] * _x[place]), leftY - (_arms[type] * _y[place]), mass + _grams[type]);
                }
            }
        }
    }

    /// <summary>The greatest part of an arm, at any place from one on, along a direction; not below nothing.</summary>
    private double Towards(int first, double x, double y)
    {
        var most = 0.0;
        for (var place = first; place < _x.Length; place++)
        {
            most = Math.Max(most, (_x[place] * x) + (_y[place] * y));
        }

        return most;
    }

    /// <summary>The last two pieces: two places that do not face each other part a vector in one way, so few masses come near.</summary>
    private void LastTwo(int at, int first, double leftX, double leftY, double within, double mass)
    {
        var lightest = _arms[0];
        for (var i = first; i < _x.Length; i++)
        {
            for (var j = _oneEach ? i + 1 : i; j < _x.Length; j++)
            {
                if (!Spend())
                {
                    return;
                }

                var cross = (_x[i] * _y[j]) - (_y[i] * _x[j]);
                var (from, to) = (0.0, _arms[^1]);
                if (Math.Abs(cross) > 1e-9)
                {
                    var spread = (within / Math.Abs(cross)) + 1e-9;
                    var onFirst = ((leftX * _y[j]) - (leftY * _x[j])) / cross;
                    if (onFirst + spread < lightest || ((_x[i] * leftY) - (_y[i] * leftX)) / cross < lightest - spread)
                    {
                        continue;
                    }

                    (from, to) = (onFirst - spread, onFirst + spread);
                }

                for (var type = FirstArm(from); type < _arms.Length && _arms[type] <= to && mass + _grams[type] + _grams[0] <= _asked.MostGrams; type++)
                {
                    if (Fits(at, i, type))
                    {
                        (_places[at], _types[at]) = (i, type);
                        LastAt(at + 1, j, leftX - (_arms[type] * _x[i]), leftY - (_arms[type] * _y[i]), mass + _grams[type]);
                    }
                }
            }
        }
    }

    /// <summary>The last piece at one place: the masses that close the gap.</summary>
    private void LastAt(int at, int place, double leftX, double leftY, double mass)
    {
        var along = (leftX * _x[place]) + (leftY * _y[place]);
        var across = (leftX * _y[place]) - (leftY * _x[place]);
        var within = _asked.For(mass + _grams[0]);
        var square = (within * within) - (across * across);
        if (within < 0 || square < 0)
        {
            return;
        }

        var half = Math.Sqrt(square) + 1e-9;
        for (var type = FirstArm(along - half); type < _arms.Length && _arms[type] <= along + half; type++)
        {
            if (!Spend())
            {
                return;
            }

            Offer(at, place, type, leftX, leftY, mass);
        }
    }

    /// <summary>The last piece: only masses and places that can close the gap are looked at.</summary>
    private void Last(int at, int first, double leftX, double leftY, double distance, double mass)
    {
        if (_x.Length <= FewPlaces)
        {
            for (var place = first; place < _x.Length; place++)
            {
                LastAt(at, place, leftX, leftY, mass);
            }

            return;
        }

        var within = _asked.For(mass + _grams[0]);
        var direction = Math.Atan2(leftY, leftX);
        for (var type = FirstArm(distance - within); type < _arms.Length && _arms[type] <= distance + within && mass + _grams[type] <= _asked.MostGrams; type++)
        {
            var (low, high) = Window(direction, distance, _arms[type], within);
            foreach (var (from, to) in PlacesIn(low, high))
            {
                for (var place = Math.Max(from, first); place < to; place++)
                {
                    if (!Spend())
                    {
                        return;
                    }

                    Offer(at, place, type, leftX, leftY, mass);
                }
            }
        }
    }

    private void Offer(int at, int place, int type, double leftX, double leftY, double mass)
    {
        var (missX, missY) = (leftX - (_arms[type] * _x[place]), leftY - (_arms[type] * _y[place]));
        var within = _asked.For(mass + _grams[type]);
        if (within >= 0 && (missX * missX) + (missY * missY) <= within * within && Fits(at, place, type))
        {
            (_places[at], _types[at]) = (place, type);
            if (_plane.Counts is null || ChoicePlane.Enough(_plane.Counts, _types.Select(t => _plane.Types.All[t])))
            {
                _list.Add(_centre - new Complex(missX, missY), mass + _grams[type], _places, _types);
            }
        }
    }

    private bool Spend()
    {
        if (_budget.Spend(1) && _list.Count < MostListed)
        {
            return true;
        }

        _list.MissingFromGrams = 0;
        return false;
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
            return [(0, _x.Length)];
        }

        var from = AllowedArcs.Turn(low);
        var to = from + (high - low);
        return to < Math.Tau
            ? [(Index(from), Index(to))]
            : [(0, Index(to - Math.Tau)), (Index(from), _x.Length)];
    }

    private int Index(double angle)
    {
        var i = Array.BinarySearch(_angles, angle);
        return i < 0 ? ~i : i;
    }

    private bool Fits(int at, int place, int type)
    {
        if (_allowed[type] is { } allowed && !allowed[place])
        {
            return false;
        }

        for (var i = 0; i < at; i++)
        {
            if (_places[i] == place && (_oneEach || _types[i] > type))
            {
                return false;
            }

            if (_sizes && !ChoicePlane.Clear(_halves[_types[i]] + _halves[type], _angles[_places[i]], _angles[place]))
            {
                return false;
            }
        }

        return true;
    }
}
