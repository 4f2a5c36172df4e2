using System.Globalization;
using Trundle.Measures;

namespace Trundle.Engine.Vehicles;

/// <summary>A side of the vehicle, as seen by someone in it who faces forward.</summary>
public enum Side
{
    /// <summary>Left.</summary>
    Left,

    /// <summary>Right.</summary>
    Right,
}

/// <summary>Which one of a dual pair.</summary>
public enum DualPlace
{
    /// <summary>The only wheel on its side of the axle.</summary>
    Single,

    /// <summary>The inner wheel.</summary>
    Inner,

    /// <summary>The outer wheel.</summary>
    Outer,
}

/// <summary>Where an assembly sits: axle from the front and side (<c>1L 1R 2L 2R</c>), duals with <c>i</c> or <c>o</c> (<c>2Lo</c>), spare <c>S</c>.</summary>
public readonly record struct Position
{
    private Position(int axle, Side side, DualPlace dual) => (Axle, Side, Dual) = (axle, side, dual);

    /// <summary>The most axles that are counted.</summary>
    public const int MostAxles = 9;

    /// <summary>The spare; also <c>default</c>.</summary>
    public static Position Spare { get; }

    /// <summary>Axle from the front, 1 and up; 0 for the spare.</summary>
    public int Axle { get; }

    /// <summary>Side; left for the spare, which has none.</summary>
    public Side Side { get; }

    /// <summary>Single, inner or outer.</summary>
    public DualPlace Dual { get; }

    /// <summary>True for the spare.</summary>
    public bool IsSpare => Axle == 0;

    /// <summary>A place on an axle, 1 to 9.</summary>
    public static Position On(int axle, Side side, DualPlace dual = DualPlace.Single)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(axle, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(axle, MostAxles);
        return new Position(axle, side, dual);
    }

    /// <summary>Reads a position such as <c>1L</c>, <c>2Ro</c> or <c>S</c>, in any case.</summary>
    public static Reading<Position> Read(string? text)
    {
        var t = (text ?? "").Trim().ToUpperInvariant();
        if (t == "S")
        {
            return Reading<Position>.Of(Spare);
        }

        return t.Length is 2 or 3 && t[0] is >= '1' and <= '9' && t[1] is 'L' or 'R' && (t.Length == 2 || t[2] is 'I' or 'O')
            ? Reading<Position>.Of(new Position(t[0] - '0', t[1] == 'L' ? Side.Left : Side.Right, t.Length == 2 ? DualPlace.Single : t[2] == 'I' ? DualPlace.Inner : DualPlace.Outer))
            : Reading<Position>.Failed("position-unknown", $"'{NumberText.Shown(text ?? "")}' is not a position; write 1L, 1R, 2L, 2R and so on, 2Li or 2Lo for duals, S for the spare.");
    }

    /// <summary>The code: <c>1L</c>, <c>2Lo</c>, <c>S</c>.</summary>
    public override string ToString() => IsSpare
        ? "S"
        : string.Create(CultureInfo.InvariantCulture, $"{Axle}{(Side == Side.Left ? 'L' : 'R')}{Dual switch { DualPlace.Single => "", DualPlace.Inner => "i", DualPlace.Outer => "o" }}");

    /// <summary>In words, for a vehicle of so many axles: "front left", "rear right outer", "axle 2 left", "spare".</summary>
    /// <param name="axles">How many axles.</param>
    /// <param name="singleTrack">One wheel on each axle: then no side is said.</param>
    public string InWords(int axles, bool singleTrack = false)
    {
        if (IsSpare)
        {
            return "spare";
        }

        var axle = axles == 2 && Axle == 2 ? "rear" : Axle == 1 ? "front" : string.Create(CultureInfo.InvariantCulture, $"axle {Axle}");
        return singleTrack ? axle : (Side, Dual) switch
        {
            (Side.Left, DualPlace.Single) => $"{axle} left",
            (Side.Left, DualPlace.Inner) => $"{axle} left inner",
            (Side.Left, DualPlace.Outer) => $"{axle} left outer",
            (Side.Right, DualPlace.Single) => $"{axle} right",
            (Side.Right, DualPlace.Inner) => $"{axle} right inner",
            (Side.Right, DualPlace.Outer) => $"{axle} right outer",
        };
    }
}
