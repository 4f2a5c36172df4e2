using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// The most that pieces of one plane can make together: side by side about one direction. Whatever the direction, moving a piece towards it adds to the
/// sum along it, so that at the most all pieces touch (docs/theory/balance.md).
/// </summary>
internal static class Fan
{
    // Up to so many pieces of different lengths every order is tried.
    private const int FewPieces = 4;

    /// <summary>
    /// A sum in g·mm that the pieces cannot pass; below nothing where they do not fit around the rim. The greatest sum itself where the lengths
    /// are equal or the pieces few.
    /// </summary>
    /// <param name="plane">The plane; its forbidden arcs are not looked at.</param>
    /// <param name="set">The pieces, lightest first.</param>
    public static double Most(ChoicePlane plane, PieceType[] set)
    {
        var (sum, round, least) = (0.0, 0.0, double.PositiveInfinity);
        foreach (var type in set)
        {
            var half = plane.HalfAngle(type);
            (sum, round, least) = (sum + type.MassGrams, round + (2 * half), Math.Min(least, half));
        }

        if (round > Math.Tau + 1e-9)
        {
            return -1;
        }

        if (round == 0)
        {
            return sum * plane.RadiusMillimetres;
        }

        var isEqual = set.All(t => plane.HalfAngle(t) <= least + 1e-12);
        return (isEqual || set.Length > FewPieces ? Piped(set, 2 * least) : Tried(plane, set)) * plane.RadiusMillimetres;
    }

    /// <summary>The heaviest in the middle and lighter ones outwards: with equal steps no other order makes more.</summary>
    private static double Piped(PieceType[] set, double step)
    {
        var (along, low, high) = (Complex.Zero, 0, set.Length - 1);
        for (var i = 0; i < set.Length; i++)
        {
            along += Complex.FromPolarCoordinates(set[i].MassGrams, step * (i % 2 == 0 ? low++ : high--));
        }

        return along.Magnitude;
    }

    private static double Tried(ChoicePlane plane, PieceType[] set)
    {
        var most = 0.0;
        Next(0, Complex.Zero, 0, 0);
        return most;

        void Next(int used, Complex sum, double at, double half)
        {
            if (used == (1 << set.Length) - 1)
            {
                most = Math.Max(most, sum.Magnitude);
                return;
            }

            for (var i = 0; i < set.Length; i++)
            {
                if ((used & (1 << i)) == 0)
                {
                    var own = plane.HalfAngle(set[i]);
                    var angle = used == 0 ? 0 : at + half + own;
                    Next(used | (1 << i), sum + Complex.FromPolarCoordinates(set[i].MassGrams, angle), angle, own);
                }
            }
        }
    }
}
