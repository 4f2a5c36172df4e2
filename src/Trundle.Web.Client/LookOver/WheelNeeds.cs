using Trundle.Engine.Vehicles;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.LookOver;

/// <summary>What the look over still needs at one wheel: what is missing, and what was typed and could not be read or was not taken.</summary>
public static class WheelNeeds
{
    /// <summary>Each thing with its field, the missing ones first.</summary>
    public static IReadOnlyList<(string Field, string What)> Of(OpenVisit visit, Position position)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var at = $"fitted.{position}.";
        var missing = visit.State.On(Leg.LookOver).Needs.Where(n => n.Position == position.ToString()).SelectMany(n => n.Parts).ToList();
        var wrong = visit.Reading.Problems.Keys.Concat(visit.Refused.Select(w => w.Entry.Field))
            .Where(f => f.StartsWith(at, StringComparison.Ordinal) && !missing.Any(m => m.Field == f))
            .Distinct(StringComparer.Ordinal)
            .Select(f => (f, $"{Name(f[at.Length..])} put right"));
        return [.. missing, .. wrong];
    }

    private static string Name(string path) => path switch
    {
        "tyre.tin" => "TIN",
        "wheel.rim" => "rim stamp",
        "wheel.boltCircle" => "bolt circle",
        "tyre.maximumPressure" => "maximum pressure",
        _ when path.StartsWith("tread.", StringComparison.Ordinal) => "a depth",
        _ when path.StartsWith("damage.", StringComparison.Ordinal) => "a damage",
        _ when path.StartsWith("wheel.damage.", StringComparison.Ordinal) => "a damage of the wheel",
        _ when path.StartsWith("tyre.repairs.", StringComparison.Ordinal) => "a repair",
        _ when path.StartsWith("valve.", StringComparison.Ordinal) => "the valve",
        _ when path.StartsWith("pressure.", StringComparison.Ordinal) => "pressure",
        _ => path.Split('.')[^1].ToLowerInvariant(),
    };
}
