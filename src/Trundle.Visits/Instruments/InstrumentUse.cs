using System.Text.Json.Nodes;
using Trundle.Engine.Fixings;
using Trundle.Engine.Instruments;
using Trundle.Measures;

namespace Trundle.Visits.Instruments;

/// <summary>A place in the work of a visit where an instrument is in the hand, or holds the vehicle.</summary>
/// <param name="Key">Its key in <c>work.instruments</c>.</param>
/// <param name="Kind">What is used there.</param>
/// <param name="Label">What it is called on a page.</param>
/// <param name="Steps">The steps of the procedure at which it is chosen; empty where it is chosen elsewhere.</param>
public sealed record InstrumentUse(string Key, InstrumentKind Kind, string Label, IReadOnlyList<string> Steps)
{
    /// <summary>Every use.</summary>
    public static IReadOnlyList<InstrumentUse> All { get; } =
    [
        new("torqueWrench", InstrumentKind.TorqueWrench, "Torque wrench in the hand", ["stages", "final-torque"]),
        new("pressureGauge", InstrumentKind.PressureGauge, "Pressure gauge in the hand", ["core-in", "pressure-set"]),
        new("depthGauge", InstrumentKind.DepthGauge, "Tread depth gauge in the hand", []),
        new("lift", InstrumentKind.Lift, "Lift under it", ["lift-points"]),
        new("jack", InstrumentKind.Jack, "Jack under it", ["lift-points"]),
        new("stands", InstrumentKind.Stands, "Stands under it", ["stands"]),
        new("mountingMachine", InstrumentKind.MountingMachine, "Mounting machine", ["bead-breaking", "clamp"]),
        new("inflationGear", InstrumentKind.InflationGear, "Inflation gear", ["seat"]),
        new("cage", InstrumentKind.Cage, "Inflation cage", ["seat"]),
        new("balancer", InstrumentKind.Balancer, "Balancer", []),
    ];

    /// <summary>The field of its name.</summary>
    public string Field => $"work.instruments.{Key}";

    /// <summary>The path under which its record stands as it was when it was taken.</summary>
    public string StandingField => $"work.instruments.standing.{Key}";

    /// <summary>The use of a key; throws where there is none, since that is a mistake in the code.</summary>
    public static InstrumentUse Of(string key) => All.First(u => u.Key == key);

    /// <summary>What is entered when an instrument is taken: its name, and its record as it stands now. A visit goes on telling both.</summary>
    public IReadOnlyList<(string Field, string Typed)> Taken(Instrument instrument)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        var list = new List<(string, string)> { (Field, instrument.Name), ($"{StandingField}.verdict", (instrument.LastJudged?.Verdict ?? InstrumentVerdict.NotJudged).Word()) };
        Put("checked", InstrumentJson.Day(instrument.LastJudged?.On));
        Put("due", InstrumentJson.Day(instrument.Due));
        Put("least", Scale(instrument, "least"));
        Put("most", Scale(instrument, "most"));
        if (Kind == InstrumentKind.TorqueWrench && instrument.LastJudged is { } last)
        {
            list.AddRange(last.Deviations.Select((d, i) => (FormattableString.Invariant($"{StandingField}.deviation.{i}"), FormattableString.Invariant($"{d:0.##} %"))));
        }

        return list;

        void Put(string key, string? text)
        {
            if (text is not null)
            {
                list.Add(($"{StandingField}.{key}", text));
            }
        }
    }

    private static string? Scale(Instrument instrument, string key) =>
        instrument.Kind == InstrumentKind.TorqueWrench && instrument.Profile?[key] is JsonValue value ? value.TryGetValue<string>(out var text) ? text : value.ToJsonString() : null;
}

/// <summary>An instrument as it was used on a visit.</summary>
/// <param name="Use">Where in the work.</param>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Recorded">True where its record was taken over with it.</param>
public sealed record UsedInstrument(InstrumentUse Use, string Name, bool Recorded)
{
    /// <summary>The day of its last judged check, or null.</summary>
    public DateOnly? Checked { get; init; }

    /// <summary>What that check said, or null where none is told.</summary>
    public InstrumentVerdict? Verdict { get; init; }

    /// <summary>When its next check is due, or null.</summary>
    public DateOnly? Due { get; init; }

    /// <summary>A torque wrench's scale and what its last check found; null for any other, and where nothing is told.</summary>
    public TorqueWrench? Wrench { get; init; }
}
