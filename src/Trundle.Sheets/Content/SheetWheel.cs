using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Sheets;

/// <summary>One wheel position on a sheet: what stood there, what stands there now, and what was recorded.</summary>
/// <param name="Position">Where.</param>
/// <param name="Name">In words, with a capital.</param>
internal sealed record SheetWheel(Position Position, string Name)
{
    /// <summary>The assembly that came in here, or null.</summary>
    public Assembly? Arrived { get; init; }

    /// <summary>The assembly that leaves here, or null.</summary>
    public Assembly? Leaving { get; init; }

    /// <summary>Where the assembly that leaves here came from; the same position where nothing moved.</summary>
    public Position CameFrom { get; init; }

    /// <summary>What was to be done to the wheel that came in here, or null where nobody planned.</summary>
    public WheelJob? Job { get; init; }

    /// <summary>The new tyre put on the wheel that came in here, or null.</summary>
    public RenewedTyre? Renewed { get; init; }

    /// <summary>The valve that went into the wheel that came in here, or null.</summary>
    public Valve? RenewedValve { get; init; }

    /// <summary>The wheel that took the place of the one that came in here, or null.</summary>
    public Wheel? RenewedWheel { get; init; }

    /// <summary>The answer about its pressure, or null.</summary>
    public JsonObject? Pressure { get; init; }

    /// <summary>The answer about its balance, or null.</summary>
    public SheetBalance? Balance { get; init; }

    /// <summary>The answer about its loss of air, or null.</summary>
    public JsonObject? Leak { get; init; }

    /// <summary>What the balancer showed at the check spin, or null.</summary>
    public StepRecord? CheckSpin { get; init; }

    /// <summary>The pressure that it was set to, or null.</summary>
    public GaugePressure? SetTo { get; init; }

    /// <summary>The torque of each fixing, from 1.</summary>
    public IReadOnlyDictionary<int, Torque> FinalTorques { get; init; } = new Dictionary<int, Torque>();

    /// <summary>True where every fixing has its recorded final torque.</summary>
    public bool FinallyTightened { get; init; }

    /// <summary>How the recorded steps stand here.</summary>
    public IReadOnlyList<StepState> Steps { get; init; } = [];

    /// <summary>The gravest finding on the vehicle as it leaves, here.</summary>
    public Category WorstLeaving { get; init; }
}

/// <summary>The balance of one wheel in both planes.</summary>
internal sealed record SheetBalance(
    Pictures.PolarPlane Inner, Pictures.PolarPlane Outer, IReadOnlyList<string> Weights, double? StaticGramMillimetres, double? CoupleGramSquareMillimetres, bool? WithinTolerance, string ToleranceWords);

/// <summary>The fixings of one axle.</summary>
/// <param name="Axle">From the front, 1 and up.</param>
/// <param name="Name">In words.</param>
/// <param name="Answer">The answer about them, or null where their number is not known.</param>
/// <param name="Fixings">As entered.</param>
/// <param name="Hub">As entered.</param>
internal sealed record SheetAxle(int Axle, string Name, JsonObject? Answer, FixingSet? Fixings, Hub? Hub)
{
    /// <summary>The order in use, or empty.</summary>
    public IReadOnlyList<int> Order => Answer?["orderInUse"] is JsonArray order ? [.. order.Select(n => n!.GetValue<int>())] : [];
}
