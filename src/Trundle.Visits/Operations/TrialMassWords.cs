using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>How large a first trial mass may be, for people and for programs.</summary>
public static class TrialMassWords
{
    /// <summary>The caution of every run with a mass on.</summary>
    internal const string Fixing = "Fix every mass so that it cannot fly off, keep people out of the plane of turning, and wear eye protection.";

    /// <summary>For the page of trial runs: the rule, with an example reckoned by it.</summary>
    public static string Rule
    {
        get
        {
            var example = new TrialRotor(Mass.FromKilograms(20), RotationalSpeed.FromRevolutionsPerMinute(850), Length.FromMillimetres(200));
            return $"To begin with, a mass whose turning force is {Share} of the weight that the bearing carries [{Figures.Of(Key).Source.ForPeople}]: {Grams(example).Text("g", 0)} for 20 kg at 850 r/min and 200 mm from the axis; at half the speed four times as much.";
        }
    }

    private const string Key = "balance.trialForcePercent";

    private static string Share => $"{Quantity.Number(Figures.Of(Key).Value, 0)} %";

    internal static Answer Alone(TrialRotor rotor) => new(false, new JsonObject { ["suggestedTrial"] = Json(rotor), ["cautions"] = AnswerJson.List([Fixing]) }, [Line(rotor), $"Caution: {Fixing}"]);

    internal static JsonObject Json(TrialRotor rotor)
    {
        var figure = Figures.Of(Key);
        return new JsonObject
        {
            ["massGrams"] = Grams(rotor).Grams,
            ["gramMillimetres"] = TrialMassSize.Suggested(rotor.Carried, rotor.Speed).GramMillimetres,
            ["forcePercent"] = figure.Value,
            ["source"] = figure.Source.Text,
            ["status"] = figure.Source.StatusText,
        };
    }

    internal static string Line(TrialRotor rotor) =>
        $"A first trial mass: {Grams(rotor).Text("g", 1)} at {rotor.Radius.Text("mm", 0)} from the axis. At {rotor.Speed.Text("r/min", 0)} its force is {Share} of the weight of {rotor.Carried.Text("kg", 1)} that the bearing carries [{Figures.Of(Key).Source.ForPeople}]. Where the maker of the machine allows less, that holds.";

    private static Mass Grams(TrialRotor rotor) => Mass.FromGrams(TrialMassSize.Suggested(rotor.Carried, rotor.Speed).GramMillimetres / rotor.Radius.Millimetres);
}
