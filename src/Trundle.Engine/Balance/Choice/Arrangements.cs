using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>Arrangements of so many pieces at the places of one plane, each with its vector in g·mm and its mass.</summary>
internal sealed class Arrangements(ChoicePlane plane, int pieces)
{
    private readonly List<int> _codes = [];

    public List<Complex> Vectors { get; } = [];

    public List<double> Masses { get; } = [];

    /// <summary>Arrangements of this mass or more may be missing; infinite where all are listed.</summary>
    public double MissingFromGrams { get; set; } = double.PositiveInfinity;

    public int Count => Vectors.Count;

    /// <summary>The one arrangement of no piece.</summary>
    public static Arrangements Nothing(ChoicePlane plane)
    {
        var list = new Arrangements(plane, 0);
        list.Add(Complex.Zero, 0, [], []);
        return list;
    }

    public void Add(Complex vector, double mass, ReadOnlySpan<int> places, ReadOnlySpan<int> types)
    {
        Vectors.Add(vector);
        Masses.Add(mass);
        for (var i = 0; i < pieces; i++)
        {
            _codes.Add(places[i]);
            _codes.Add(types[i]);
        }
    }

    /// <summary>The pieces of one arrangement.</summary>
    public PlacedPiece[] Pieces(int index)
    {
        var placed = new PlacedPiece[pieces];
        for (var i = 0; i < pieces; i++)
        {
            var at = ((index * pieces) + i) * 2;
            placed[i] = new PlacedPiece(plane.Types.All[_codes[at + 1]], plane.Places![_codes[at]]);
        }

        return placed;
    }

    /// <summary>Takes over one arrangement of another list.</summary>
    public void AddFrom(Arrangements other, int index)
    {
        Vectors.Add(other.Vectors[index]);
        Masses.Add(other.Masses[index]);
        _codes.AddRange(other._codes.GetRange(index * pieces * 2, pieces * 2));
    }

    /// <summary>
    /// Where no part of the score joins the planes and nothing is counted, only the distance from the need and the mass matter: of each mass
    /// the nearest is kept.
    /// </summary>
    public Arrangements NearestOfEachMass(Complex need)
    {
        var best = new Dictionary<long, int>();
        for (var i = 0; i < Count; i++)
        {
            var key = (long)Math.Round(Masses[i] * 1e5);
            if (!best.TryGetValue(key, out var other) || (Vectors[i] - need).Magnitude < (Vectors[other] - need).Magnitude)
            {
                best[key] = i;
            }
        }

        var kept = new Arrangements(plane, pieces) { MissingFromGrams = MissingFromGrams };
        foreach (var i in best.Values.Order())
        {
            kept.AddFrom(this, i);
        }

        return kept;
    }
}
