namespace Trundle.Visits.Procedures;

/// <summary>Something that makes the hand work at a wheel another than the ordinary.</summary>
public enum Circumstance
{
    /// <summary>A short sidewall.</summary>
    LowProfile,

    /// <summary>A tyre that is built to run without air.</summary>
    RunFlat,

    /// <summary>A pressure sensor in the wheel.</summary>
    Sensor,

    /// <summary>A tyre that needs a tube.</summary>
    TubeType,

    /// <summary>A rim whose well lies nearer the inner side.</summary>
    ReversedRim,

    /// <summary>A motorcycle's wheel.</summary>
    Motorcycle,

    /// <summary>The vehicle stands on air.</summary>
    AirSuspension,

    /// <summary>A wheel that one person does not lift.</summary>
    HeavyWheel,

    /// <summary>A truck's or a bus's tyre.</summary>
    Truck,

    /// <summary>A rim of several pieces.</summary>
    MultiPiece,

    /// <summary>A puncture is repaired.</summary>
    Repair,
}

/// <summary>The words of the circumstances.</summary>
public static class CircumstanceWords
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Circumstance> All { get; } = [.. Enum.GetValues<Circumstance>()];

    /// <summary>As a word in files.</summary>
    public static string Key(this Circumstance circumstance) => circumstance switch
    {
        Circumstance.LowProfile => "lowProfile",
        Circumstance.RunFlat => "runFlat",
        Circumstance.Sensor => "sensor",
        Circumstance.TubeType => "tubeType",
        Circumstance.ReversedRim => "reversedRim",
        Circumstance.Motorcycle => "motorcycle",
        Circumstance.AirSuspension => "airSuspension",
        Circumstance.HeavyWheel => "heavyWheel",
        Circumstance.Truck => "truck",
        Circumstance.MultiPiece => "multiPiece",
        Circumstance.Repair => "repair",
    };

    /// <summary>As people say it.</summary>
    public static string ForPeople(this Circumstance circumstance) => circumstance switch
    {
        Circumstance.LowProfile => "low profile",
        Circumstance.RunFlat => "run-flat tyre",
        Circumstance.Sensor => "sensor in the wheel",
        Circumstance.TubeType => "tube type",
        Circumstance.ReversedRim => "reversed rim",
        Circumstance.Motorcycle => "motorcycle",
        Circumstance.AirSuspension => "air suspension",
        Circumstance.HeavyWheel => "heavy wheel",
        Circumstance.Truck => "truck or bus tyre",
        Circumstance.MultiPiece => "rim of several pieces",
        Circumstance.Repair => "puncture repair",
    };
}

/// <summary>What is so at one wheel, or at the vehicle: yes, no, or not known.</summary>
public sealed record Circumstances
{
    private readonly IReadOnlyDictionary<Circumstance, bool?> _known;

    /// <summary>What each is; one that is left out is not so.</summary>
    public Circumstances(IReadOnlyDictionary<Circumstance, bool?> known) => _known = known;

    /// <summary>The ordinary wheel: nothing of it is so.</summary>
    public static Circumstances Ordinary { get; } = new(new Dictionary<Circumstance, bool?>());

    /// <summary>True, false, or null where nobody knows.</summary>
    public bool? this[Circumstance circumstance] => _known.GetValueOrDefault(circumstance, false);

    /// <summary>It is so.</summary>
    public bool Does(Circumstance circumstance) => this[circumstance] == true;

    /// <summary>It is so, or nobody knows.</summary>
    public bool May(Circumstance circumstance) => this[circumstance] != false;

    /// <summary>What is so.</summary>
    public IEnumerable<Circumstance> Given => CircumstanceWords.All.Where(Does);

    /// <summary>What is so at any of several wheels; not known where it is so at none and not known at one.</summary>
    public static Circumstances AtAny(IEnumerable<Circumstances> wheels)
    {
        ArgumentNullException.ThrowIfNull(wheels);
        var all = wheels.ToList();
        return new Circumstances(CircumstanceWords.All.ToDictionary(c => c, c => all.Exists(w => w.Does(c)) ? true : all.Exists(w => w.May(c)) ? (bool?)null : false));
    }

    /// <summary>The same with one of them told.</summary>
    public Circumstances With(Circumstance circumstance, bool? so) =>
        new(new Dictionary<Circumstance, bool?>(_known) { [circumstance] = so });
}
