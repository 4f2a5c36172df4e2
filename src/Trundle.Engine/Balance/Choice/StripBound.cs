using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>Whether strips heavier than those listed could come near a vector, at the places of one plane.</summary>
internal sealed class StripBound
{
    // Up to so many places, every set of three or more of them is looked at.
    private const int FewPlaces = 16;

    private readonly double[] _angles;
    private readonly double _heaviest;
    private readonly double _leastSine;
    private readonly bool _facingAreBounded;
    private readonly double? _step;

    public StripBound(ChoicePlane plane)
    {
        _angles = [.. plane.Places!.Select(double.DegreesToRadians)];
        _heaviest = plane.Types.HeaviestStripGrams * plane.RadiusMillimetres;
        _leastSine = ChoicePlane.LeastSine(plane.Places!);
        _step = WholeStep.Of(plane.Types.All.Select(t => t.MassGrams)) * plane.RadiusMillimetres;

        // Of two strips that face each other the lighter one can be left off and taken from the heavier, where the drawer makes every difference,
        // and none longer than the strip that it stands for.
        var (types, lightest) = (plane.Types.All, plane.Types.LightestGrams * plane.RadiusMillimetres);
        var makesDifferences = plane.Counts is null && _step is { } step && Math.Abs(step - lightest) < 1e-6 * lightest
            && types.Zip(types.Skip(1)).All(t => t.First.SizeMillimetres <= t.Second.SizeMillimetres);
        _facingAreBounded = makesDifferences || !HaveFacing(_angles);
    }

    /// <summary>True where no strip heavier than those listed could come within a distance of a vector, be there so many pieces.</summary>
    public bool Holds(int pieces, Complex centre, double within)
    {
        var needed = centre.Magnitude + within;
        if (double.IsPositiveInfinity(_heaviest) || (pieces == 1 && _heaviest >= needed))
        {
            return true;
        }

        // Strips that all lie to one side of a line through the axle: none is more than the part of the vector that its place can stand for.
        return pieces > 1 && _facingAreBounded && _heaviest >= needed / _leastSine
            && (pieces == 2 || (_angles.Length <= FewPlaces && AllMiss(0, new double[pieces], 0, centre, within)));
    }

    private static bool HaveFacing(double[] angles) => (from a in angles from b in angles select Math.Cos(a - b)).Any(cosine => cosine < -1 + 1e-12);

    /// <summary>True where every set of places that lies all round, and so could carry strips of any mass, misses by its steps.</summary>
    private bool AllMiss(int at, double[] chosen, int from, Complex centre, double within)
    {
        if (at == chosen.Length)
        {
            return !IsAllRound(chosen) || Misses(chosen, centre, within);
        }

        for (var i = from; i < _angles.Length; i++)
        {
            chosen[at] = _angles[i];
            if (!AllMiss(at + 1, chosen, i + 1, centre, within))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True where places, in order, leave no gap of half a turn.</summary>
    private static bool IsAllRound(double[] places)
    {
        for (var i = 0; i < places.Length; i++)
        {
            var gap = i + 1 < places.Length ? places[i + 1] - places[i] : places[0] + Math.Tau - places[i];
            if (gap > Math.PI - 1e-9)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Seen across the direction of one of the places, the others may add up in steps; true where no step comes near.</summary>
    private bool Misses(double[] places, Complex centre, double within)
    {
        foreach (var along in places)
        {
            var across = places.Select(p => Math.Abs(Math.Sin(p - along))).Where(sine => sine > 1e-9);
            if (WholeStep.Of(across) * _step is { } step)
            {
                var wanted = (centre * Complex.FromPolarCoordinates(1, -along)).Imaginary;
                if (Math.Abs(wanted - (step * Math.Round(wanted / step))) > within + 1e-9)
                {
                    return true;
                }
            }
        }

        return false;
    }
}
