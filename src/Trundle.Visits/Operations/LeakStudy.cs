using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>What the readings of a tyre tell: for the answer of <c>leak</c> and for its drawing.</summary>
/// <param name="Loss">The line through the readings.</param>
/// <param name="Plan">The tyre's pressures, with the last reading as the one found.</param>
/// <param name="Warning">The pressure at which the vehicle warns, or null where nothing tells it.</param>
/// <param name="Until">How long until then at the reference temperature, or null.</param>
/// <param name="Cold">The same at the coldest temperature expected, or null.</param>
internal sealed record LeakStudy(PressureLoss Loss, PressurePlan Plan, SourcedPressure? Warning, TimeToPressure? Until, TimeToPressure? Cold)
{
    /// <summary>Lays the line; a problem where the readings hold no loss.</summary>
    public static Reading<LeakStudy> Of(LeakFile file) => PressureLoss.Of(file.Readings, file.Accuracy, file.Reference).Then(loss =>
    {
        var plan = PressurePlan.For(file.Subject, new PressureConditions(file.Subject.Ambient, null, null, null, false, file.Subject.Rules));
        var warning = file.Warning is { } own
            ? new SourcedPressure(own, Source.Entered("the vehicle's own warning pressure, as entered"))
            : plan.Positions[0].Warning.Ruling;
        return Reading<LeakStudy>.Of(new LeakStudy(
            loss,
            plan,
            warning,
            warning is null ? null : loss.Until(warning.Pressure, loss.Reference),
            warning is null || file.Expected is not { } expected ? null : loss.Until(warning.Pressure, expected)));
    });
}
