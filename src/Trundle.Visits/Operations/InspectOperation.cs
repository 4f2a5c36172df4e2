using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>inspect FILE --rules us|uk|eu</c>: what is fitted, and the state that it is in.</summary>
public static class InspectOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("inspect", "What is fitted and the state it is in: tread, age, damage, pressure, wear; what may run, may be repaired, or is discarded.", Run)
    {
        TakesFile = true,
        Options = [CheckAnswer.RulesOption, CheckAnswer.ShopRulesOption],
    };

    /// <summary>Judges a vehicle that was read: its condition, and what is fitted.</summary>
    public static CheckResult Check(FittedVehicle subject) => ConditionCheck.Run(subject).With(FitmentCheck.Run(subject));

    private static Reading<Answer> Run(FileNode body) => CheckAnswer.Of(body, Check, InspectionVerdicts.Of);
}
