using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>With what a puncture is repaired.</summary>
public enum RepairKind
{
    /// <summary>The hole is filled and the liner sealed, both from inside.</summary>
    PlugAndPatch,

    /// <summary>A plug or a string pushed in from outside, the tyre on the rim.</summary>
    PlugFromOutside,

    /// <summary>A plug alone.</summary>
    PlugAlone,

    /// <summary>A patch alone.</summary>
    PatchAlone,
}

/// <summary>What was found of a puncture from inside, and with what it is repaired. What nobody entered is null and is asked for.</summary>
public sealed record RepairRecord
{
    /// <summary>Where it comes out.</summary>
    public DamagePlace? Place { get; init; }

    /// <summary>How large the hole is once it is cleaned.</summary>
    public Length? Size { get; init; }

    /// <summary>How far from the middle of the tread it reaches.</summary>
    public Length? FromMiddle { get; init; }

    /// <summary>How much it leans off square to the tread.</summary>
    public Angle? Lean { get; init; }

    /// <summary>Where around the tyre, clockwise from the valve as seen from outside; or null.</summary>
    public Angle? Around { get; init; }

    /// <summary>How far it is from the nearest earlier repair; 0 where it would overlap it.</summary>
    public Length? FromRepair { get; init; }

    /// <summary>How far round the tyre the nearest earlier repair is.</summary>
    public Angle? RoundFromRepair { get; init; }

    /// <summary>With what.</summary>
    public RepairKind? Kind { get; init; }

    /// <summary>The material: maker's name of it and size, or null.</summary>
    public string? Material { get; init; }

    /// <summary>The words of the kinds.</summary>
    public static IReadOnlyList<(string Word, RepairKind Value)> KindWords { get; } =
        [("plug and patch", RepairKind.PlugAndPatch), ("plug from outside", RepairKind.PlugFromOutside), ("plug alone", RepairKind.PlugAlone), ("patch alone", RepairKind.PatchAlone)];

    /// <summary>The words of the places.</summary>
    public static IReadOnlyList<(string Word, DamagePlace Value)> PlaceWords { get; } =
        [("tread", DamagePlace.Tread), ("shoulder", DamagePlace.Shoulder), ("sidewall", DamagePlace.Sidewall), ("bead", DamagePlace.Bead)];

    /// <summary>The path of a wheel's record, by the position at which it came in.</summary>
    public static string FieldAt(string position) => $"work.repairs.{position}";

    /// <summary>Reads a record; null where it says that none is asked for.</summary>
    public static RepairRecord? Read(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var asked = o.Flag("asked");
        var record = new RepairRecord
        {
            Place = o.Word("place", [.. PlaceWords]),
            Size = o.Quantity<Length>("size", "mm", Length.FromMillimetres(0.1), Length.FromMillimetres(200)),
            FromMiddle = o.Quantity<Length>("fromMiddle", "mm", Length.FromMillimetres(0), Length.FromMillimetres(400)),
            Lean = o.Quantity<Angle>("lean", "°", Angle.FromDegrees(0), Angle.FromDegrees(90)),
            Around = o.Quantity<Angle>("around", "°", Angle.FromDegrees(0), Angle.FromDegrees(360)),
            FromRepair = o.Quantity<Length>("fromRepair", "mm", Length.FromMillimetres(0), Length.FromMetres(5)),
            RoundFromRepair = o.Quantity<Angle>("roundFromRepair", "°", Angle.FromDegrees(0), Angle.FromDegrees(180)),
            Kind = o.Word("kind", [.. KindWords]),
            Material = o.Text("material"),
        };
        o.Done();
        return asked == false ? null : record;
    }
}

/// <summary>What a licensed shop did to a wheel that is not worked on here.</summary>
/// <param name="By">Which shop, and who there; or null.</param>
/// <param name="Paper">The number of its paper, or null.</param>
public sealed record LicensedWork(string? By, string? Paper)
{
    /// <summary>True where both are there: only then is the wheel accounted for.</summary>
    public bool Whole => By is not null && Paper is not null;

    /// <summary>The path of a wheel's record, by the position at which it came in.</summary>
    public static string FieldAt(string position) => $"work.licensed.{position}";

    /// <summary>Reads a record.</summary>
    public static LicensedWork Read(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var work = new LicensedWork(o.Text("by"), o.Text("paper"));
        o.Done();
        return work;
    }
}
