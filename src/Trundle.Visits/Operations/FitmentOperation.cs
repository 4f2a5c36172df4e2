using Trundle.Engine.Fitment;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>fitment FILE</c>: what is fitted to a vehicle against its placard, its hubs and itself.</summary>
public static class FitmentOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("fitment", "What is fitted, against placard, hub and each other.", Run)
    {
        TakesFile = true,
        Options = [CheckAnswer.RulesOption, CheckAnswer.ShopRulesOption],
    };

    private static Reading<Answer> Run(FileNode body) => CheckAnswer.Of(body, FitmentCheck.Run);
}
