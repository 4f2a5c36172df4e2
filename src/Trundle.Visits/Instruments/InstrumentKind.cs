using Trundle.Engine.Reference;

namespace Trundle.Visits.Instruments;

/// <summary>What an instrument is.</summary>
public enum InstrumentKind
{
    /// <summary>A balancer.</summary>
    Balancer,

    /// <summary>A torque wrench.</summary>
    TorqueWrench,

    /// <summary>A pressure gauge.</summary>
    PressureGauge,

    /// <summary>A tread depth gauge.</summary>
    DepthGauge,

    /// <summary>A lift.</summary>
    Lift,

    /// <summary>A jack.</summary>
    Jack,

    /// <summary>A pair or set of stands.</summary>
    Stands,

    /// <summary>A machine that mounts and demounts tyres.</summary>
    MountingMachine,

    /// <summary>What tyres are inflated with: hose, chuck, valve and gauge.</summary>
    InflationGear,

    /// <summary>A cage in which a tyre is inflated.</summary>
    Cage,

    /// <summary>Anything else with a record of its own.</summary>
    Other,
}

/// <summary>What a record of an instrument is about.</summary>
public enum InstrumentRecordKind
{
    /// <summary>Its name, identification, and since when it is in use.</summary>
    Details,

    /// <summary>A balancer's profile.</summary>
    Profile,

    /// <summary>A balancer tried with known masses.</summary>
    MachineCheck,

    /// <summary>A balancer's repeated spins of one assembly.</summary>
    RepeatSpins,

    /// <summary>Calibrated by somebody outside the workshop.</summary>
    OutsideCalibration,

    /// <summary>Compared in the workshop with a reference.</summary>
    Comparison,

    /// <summary>Looked over by somebody who may say that it is safe to use.</summary>
    Inspection,

    /// <summary>Anything worth knowing: dropped, repaired, moved.</summary>
    Note,
}

/// <summary>The words of instruments.</summary>
public static class InstrumentWords
{
    private static readonly (InstrumentKind Kind, string Word)[] Kinds =
    [
        (InstrumentKind.Balancer, "balancer"), (InstrumentKind.TorqueWrench, "torque wrench"), (InstrumentKind.PressureGauge, "pressure gauge"),
        (InstrumentKind.DepthGauge, "depth gauge"), (InstrumentKind.Lift, "lift"), (InstrumentKind.Jack, "jack"), (InstrumentKind.Stands, "stands"),
        (InstrumentKind.MountingMachine, "mounting machine"), (InstrumentKind.InflationGear, "inflation gear"), (InstrumentKind.Cage, "inflation cage"), (InstrumentKind.Other, "other"),
    ];

    private static readonly (InstrumentRecordKind Kind, string Word)[] RecordKinds =
    [
        (InstrumentRecordKind.Details, "details"), (InstrumentRecordKind.Profile, "profile"), (InstrumentRecordKind.MachineCheck, "machine check"),
        (InstrumentRecordKind.RepeatSpins, "repeat-spin study"), (InstrumentRecordKind.OutsideCalibration, "calibration by outside"),
        (InstrumentRecordKind.Comparison, "comparison with a reference"), (InstrumentRecordKind.Inspection, "inspection"), (InstrumentRecordKind.Note, "note"),
    ];

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<InstrumentKind> All { get; } = [.. Kinds.Select(k => k.Kind)];

    /// <summary>The word of a kind.</summary>
    public static string Word(this InstrumentKind kind) => Kinds.First(k => k.Kind == kind).Word;

    /// <summary>The word of a record.</summary>
    public static string Word(this InstrumentRecordKind kind) => RecordKinds.First(k => k.Kind == kind).Word;

    /// <summary>The kind of a word, or null.</summary>
    public static InstrumentKind? KindOf(string? word) => Kinds.Where(k => k.Word == word?.Trim()).Select(k => (InstrumentKind?)k.Kind).FirstOrDefault();

    /// <summary>The kind of a record's word, or null.</summary>
    public static InstrumentRecordKind? RecordKindOf(string? word) => RecordKinds.Where(k => k.Word == word?.Trim()).Select(k => (InstrumentRecordKind?)k.Kind).FirstOrDefault();

    /// <summary>True where the record says how good the instrument is.</summary>
    public static bool IsCheck(this InstrumentRecordKind kind) =>
        kind is InstrumentRecordKind.MachineCheck or InstrumentRecordKind.RepeatSpins or InstrumentRecordKind.OutsideCalibration or InstrumentRecordKind.Comparison or InstrumentRecordKind.Inspection;

    /// <summary>True where it measures nothing and is looked over instead of calibrated.</summary>
    public static bool IsInspected(this InstrumentKind kind) =>
        kind is InstrumentKind.Lift or InstrumentKind.Jack or InstrumentKind.Stands or InstrumentKind.MountingMachine or InstrumentKind.InflationGear or InstrumentKind.Cage;

    /// <summary>The figure of the customary time between two checks of a kind, or null where none is carried.</summary>
    public static Figure? Interval(this InstrumentKind kind) => kind switch
    {
        InstrumentKind.TorqueWrench => Figures.Of("instruments.interval.torque-wrench"),
        InstrumentKind.Lift => Figures.Of("instruments.interval.lift"),
        InstrumentKind.Jack => Figures.Of("instruments.interval.jack"),
        InstrumentKind.Stands => Figures.Of("instruments.interval.stands"),
        InstrumentKind.Cage => Figures.Of("instruments.interval.cage"),
        InstrumentKind.Balancer or InstrumentKind.PressureGauge or InstrumentKind.DepthGauge or InstrumentKind.MountingMachine or InstrumentKind.InflationGear or InstrumentKind.Other => null,
    };
}
