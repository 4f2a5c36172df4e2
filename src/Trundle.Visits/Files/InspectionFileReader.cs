using System.Globalization;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads what was looked at on a tyre, a wheel, a valve and a sensor: damages, earlier repairs, the maker's word, wear.</summary>
public static class InspectionFileReader
{
    private const double MostHours = 100;

    /// <summary>The words of the kinds of damage.</summary>
    public static IReadOnlyList<(string Word, DamageKind Value)> DamageWords { get; } =
    [
        ("puncture", DamageKind.Puncture), ("cut", DamageKind.Cut), ("bulge", DamageKind.Bulge), ("cord", DamageKind.Cord), ("crack", DamageKind.Crack), ("bead", DamageKind.Bead),
        ("separation", DamageKind.Separation), ("chunk", DamageKind.Chunk), ("run-low", DamageKind.RunLowMarks), ("ripple", DamageKind.Ripple), ("leak", DamageKind.Leak), ("oil", DamageKind.Oil), ("other", DamageKind.Other),
    ];

    /// <summary>The words of the kinds of damage of a wheel.</summary>
    public static IReadOnlyList<(string Word, WheelDamageKind Value)> WheelDamageWords { get; } =
    [
        ("crack", WheelDamageKind.Crack), ("bent-flange", WheelDamageKind.BentFlange), ("corrosion", WheelDamageKind.Corrosion), ("bore-wear", WheelDamageKind.BoreWear), ("seat-wear", WheelDamageKind.SeatWear),
        ("elongated-hole", WheelDamageKind.ElongatedHole), ("weld", WheelDamageKind.Weld), ("lock-ring", WheelDamageKind.LockRing), ("other", WheelDamageKind.Other),
    ];

    private static readonly (string, DamagePlace)[] PlaceWords = [("tread", DamagePlace.Tread), ("shoulder", DamagePlace.Shoulder), ("sidewall", DamagePlace.Sidewall), ("bead", DamagePlace.Bead)];

    /// <summary>One damage of a tyre.</summary>
    internal static Damage? ReadDamage(FileObject o)
    {
        var kind = o.Require("kind", "say what it is, for example puncture") ? o.Word("kind", [.. DamageWords]) : null;
        var place = o.Require("place", "say where it is, for example sidewall") ? o.Word("place", PlaceWords) : null;
        var most = Length.FromMillimetres(1000);
        var damage = new Damage(kind ?? DamageKind.Other, place ?? DamagePlace.Tread, Extent(o, "size", most))
        {
            Depth = Extent(o, "depth", Length.FromMillimetres(100)),
            CordShows = o.Flag("cord"),
            Joined = o.Flag("joined"),
            Lean = o.Quantity<Angle>("lean", "°", Angle.FromDegrees(0), Angle.FromDegrees(90)),
            FromMiddle = Extent(o, "fromMiddle", most),
            Around = Around(o),
            FromRepair = Extent(o, "fromRepair", Length.FromMetres(5)),
            RoundFromRepair = o.Quantity<Angle>("roundFromRepair", "°", Angle.FromDegrees(0), Angle.FromDegrees(180)),
        };
        o.Done();
        return kind is null || place is null ? null : damage;
    }

    /// <summary>What is known of a tyre's repairs and of its maker's word about them.</summary>
    internal static RepairHistory ReadHistory(FileObject o)
    {
        var repaired = o.Flag("repaired");
        var repairs = o.Objects("repairs").Select(ReadRepair).OfType<EarlierRepair>().ToList();
        if (repaired == false && repairs.Count > 0)
        {
            o.Wrong("repaired", "repaired-contradicts", "'repaired' is false, and repairs are listed; put one of the two right.");
        }

        return new RepairHistory
        {
            Repairs = repairs.Count > 0 || repaired == false || (repaired is null && o.Node("repairs") is not null) ? repairs : null,
            Policy = Policy(o),
            PolicyText = o.Text("repairPolicyFrom"),
            RunFlat = o.Flag("runFlat") ?? false,
            SelfSealing = o.Flag("selfSealing") ?? false,
            RanLow = o.Flag("ranLow"),
            RanLowDistance = o.Quantity<Length>("ranLowDistance", "km", Length.FromMetres(0), Length.FromKilometres(1000)),
            RanLowTime = o.Value("ranLowTime", ReadTime),
        };
    }

    /// <summary>The damages of a wheel.</summary>
    internal static IReadOnlyList<WheelDamage> ReadWheelDamage(FileObject wheel)
    {
        var list = new List<WheelDamage>();
        foreach (var o in wheel.Objects("damage"))
        {
            var kind = o.Require("kind", "say what it is, for example bent-flange") ? o.Word("kind", [.. WheelDamageWords]) : null;
            var size = Extent(o, "size", Length.FromMillimetres(1000));
            o.Done();
            if (kind is { } k)
            {
                list.Add(new WheelDamage(k, size));
            }
        }

        return list;
    }

    /// <summary>The words of the kinds of valves.</summary>
    public static IReadOnlyList<(string Word, ValveKind Value)> ValveWords { get; } =
        [("rubber-snap-in", ValveKind.RubberSnapIn), ("high-pressure-snap-in", ValveKind.HighPressureSnapIn), ("clamp-in", ValveKind.ClampIn)];

    /// <summary>A valve.</summary>
    internal static Valve ReadValve(FileObject o)
    {
        var valve = new Valve
        {
            Kind = o.Word("kind", [.. ValveWords]),
            State = o.Word("state", ("sound", ValveState.Sound), ("cracked", ValveState.Cracked), ("leaking", ValveState.Leaking), ("corroded", ValveState.Corroded)),
            Renewed = o.Date("renewed"),
            Rating = o.Quantity<GaugePressure>("rating", "kPa", GaugePressure.FromKilopascals(100), GaugePressure.FromKilopascals(2000)),
            Cap = o.Flag("cap"),
        };
        o.Done();
        return valve;
    }

    /// <summary>The parts of a sensor.</summary>
    internal static SensorParts ReadSensorParts(FileObject o)
    {
        var parts = new SensorParts(
            o.Word("battery", ("good", SensorBattery.Good), ("low", SensorBattery.Low)),
            o.Word("seal", ("sound", false), ("worn", true)),
            o.Word("nut", ("sound", false), ("corroded", true)));
        o.Done();
        return parts;
    }

    /// <summary>Asked and not known is as if nobody had asked: the check goes on asking.</summary>
    private static RepairPolicy? Policy(FileObject o) =>
        o.Word("repairPolicy", ("permitted", 0), ("not permitted", 1), ("not known", 2)) switch { 0 => RepairPolicy.Permitted, 1 => RepairPolicy.NotPermitted, _ => null };

    private static Angle? Around(FileObject o) => o.Quantity<Angle>("around", "°", Angle.FromDegrees(0), Angle.FromDegrees(360));

    private static EarlierRepair? ReadRepair(FileObject o)
    {
        var place = o.Require("place", "say where the repair is, for example tread") ? o.Word("place", PlaceWords) : null;
        var size = Extent(o, "size", Length.FromMillimetres(200));
        var method = o.Word("method", ("stem and patch", RepairMethod.StemAndPatch), ("patch", RepairMethod.PatchAlone), ("plug", RepairMethod.PlugAlone), ("section", RepairMethod.Section));
        var around = Around(o);
        o.Done();
        return place is { } p ? new EarlierRepair(p, size, method) { Around = around } : null;
    }

    private static Length? Extent(FileObject o, string key, Length most) => o.Quantity<Length>(key, "mm", Length.FromMillimetres(0), most);

    /// <summary>A time as it is told: <c>12 min</c>, <c>1.5 h</c>; a bare number is minutes.</summary>
    public static Reading<TimeSpan> ReadTime(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var typed = text.Trim();
        var unit = new[] { "minutes", "min", "hours", "hour", "h" }.FirstOrDefault(u => typed.EndsWith(u, StringComparison.OrdinalIgnoreCase));
        var hours = unit is not null && unit.StartsWith('h');
        return NumberText.Read(unit is null ? typed : typed[..^unit.Length].TrimEnd()).Then(n => n >= 0 && n <= (hours ? MostHours : MostHours * 60)
            ? Reading<TimeSpan>.Of(hours ? TimeSpan.FromHours(n) : TimeSpan.FromMinutes(n))
            : Reading<TimeSpan>.Failed("out-of-range", string.Create(CultureInfo.InvariantCulture, $"'{NumberText.Shown(text)}' is no time that a tyre runs without air; write minutes or hours, at most {MostHours} h, for example 12 min.")));
    }
}
