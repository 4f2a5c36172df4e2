using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Bench;

/// <summary>A cone on the balancer's shaft that centres a wheel by its bore.</summary>
/// <param name="Name">Its number in the set.</param>
/// <param name="Small">Diameter of its small end.</param>
/// <param name="Large">Diameter of its large end.</param>
public sealed record CentringCone(string Name, Length Small, Length Large)
{
    /// <summary>True where it enters the bore and stops within it.</summary>
    public bool Suits(Length bore) => bore > Small && bore < Large;

    /// <summary>How far the wheel may hang off the axis where the cone passes through the bore: half of what is between them; else nothing.</summary>
    public Length PlayIn(Length bore) => bore >= Large ? (bore - Large) / 2 : default;
}

/// <summary>How a wheel was put on the shaft.</summary>
/// <param name="Cone">The cone taken.</param>
/// <param name="SmallEndOutwards">Its small end points away from the machine, into the bore.</param>
/// <param name="NutRunFree">The nut was run up free by hand while the wheel was turned, and only then tightened.</param>
public sealed record Clamping(CentringCone Cone, bool SmallEndOutwards, bool NutRunFree)
{
    /// <summary>Centred as it should be.</summary>
    public bool Centres(Length bore) => Cone.Suits(bore) && SmallEndOutwards && NutRunFree;
}

/// <summary>The cones of the practice bench, and where a wheel comes to sit with them.</summary>
public static class CentringCones
{
    /// <summary>The set, smallest first.</summary>
    public static IReadOnlyList<CentringCone> Set { get; } = Load();

    /// <summary>
    /// How far off the axis a wheel comes to sit, and which way. Right, it is what even a good clamping scatters by; else as far as the mistake lets it. Each new clamping
    /// sits another way: that is how it shows.
    /// </summary>
    /// <param name="clamping">How it was clamped.</param>
    /// <param name="bore">The wheel's bore.</param>
    /// <param name="seed">The wheel's seed.</param>
    /// <param name="number">How often it was clamped before.</param>
    /// <returns>The eccentricity, and where on the wheel the centre of mass lies from the shaft's axis by it.</returns>
    /// <source>own choice for practice: docs/theory/practice.md (centring); the play of a cone that passes through is geometry</source>
    public static (Length Off, WheelAngle Towards) SeatOf(Clamping clamping, Length bore, ulong seed, int number)
    {
        ArgumentNullException.ThrowIfNull(clamping);
        var stream = SeedStream.Of(seed, "clamping", number);
        var towards = WheelAngle.FromDegrees(stream.Between(0, 3599) / 10.0);
        var share = stream.Between(0, 1000) / 1000.0;
        var play = clamping.Cone.PlayIn(bore);
        var (least, most) =
            !clamping.Cone.Suits(bore) && play.Si > 0 ? (play / 2, play)
            : !clamping.Cone.Suits(bore) || !clamping.SmallEndOutwards ? (Figure("cone-not-centring-least"), Figure("cone-not-centring-most"))
            : !clamping.NutRunFree ? (Figure("nut-not-free-least"), Figure("nut-not-free-most"))
            : (default, Figure("seat-scatter"));
        return (least + ((most - least) * share), towards);
    }

    private static Length Figure(string key) => Figures.Of($"practice.{key}").As<Length>();

    private static CentringCone[] Load()
    {
        var table = CsvTable.Embedded("practice_cones.csv");
        return [.. table.Rows.Select(r => new CentringCone(table.Cell(r, "cone"), Millimetres(r, "small_mm"), Millimetres(r, "large_mm")))];

        Length Millimetres(string[] row, string column) => Length.FromMillimetres(double.Parse(table.Cell(row, column), CultureInfo.InvariantCulture));
    }
}
