using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Drills;

/// <summary>A damage to be judged: what becomes of the tyre is the engine's verdict.</summary>
internal static class DamageDrill
{
    private static readonly Verdict[] Verdicts = [Verdict.MayRun, Verdict.Repair, Verdict.Refer, Verdict.PutRight, Verdict.Renew, Verdict.Discard];

    public static Drill Of(ulong seed)
    {
        var stream = SeedStream.Of(seed, "damage");
        var rules = stream.OneOf(PractisedVehicle.Rules);
        var damage = Drawn(stream);
        const string marking = "205/55 R16 91V";
        Length[] deep = [Length.FromMillimetres(6), Length.FromMillimetres(6), Length.FromMillimetres(6)];
        var assembly = new Assembly { Position = Position.On(1, Side.Left), Tyre = new FittedTyre { Marking = PractisedVehicle.Marking(marking), History = RepairHistory.NotKnown }, Tread = new TreadDepths(deep, deep, deep), Damage = [damage] };
        var vehicle = PractisedVehicle.Of(Drive.Front, rules, [assembly], marking, marking);
        var part = InspectionVerdicts.Of(vehicle, ConditionCheck.Run(vehicle)).First(p => p.Part == InspectedPart.Tyre);
        var verdict = part.Damage[0].Verdict;
        var reason = part.Damage[0].Reasons is [var first, ..] ? first : null;
        var runs = verdict == Verdict.MayRun;
        var grave = verdict is Verdict.Renew or Verdict.Discard;
        return new Drill(DrillKind.Damage, seed, DrillList.Title(DrillKind.Damage),
        [
            new("tyre", $"{marking}, 6 mm of tread left"),
            new("rules", PractisedVehicle.Word(rules)),
            new("found", Words(damage)),
        ],
        [
            Asking.Choice(new("verdict", "What becomes of the tyre for this damage?", 60, true), [.. Verdicts.Select(v => new DrillChoice(Key(v), v.Word()))], key => key == Key(verdict),
                _ => $"{reason?.Action ?? "Nothing speaks against it."}{(reason?.Limit is { } limit ? $" Limit {limit.Amount.Text}." : "")}",
                reason?.Source ?? Source.CommonPractice,
                key => grave && key == Key(Verdict.MayRun) ? new SafetyStop("damage", $"A tyre that is to be {(verdict == Verdict.Discard ? "discarded" : "renewed")} was let run: {reason?.Action}") : null),
            Asking.Choice(new("drive", "May the vehicle leave on it as it is?", 40, true), Asking.YesNo, key => key == (runs ? "yes" : "no"),
                _ => reason?.Action ?? "Nothing speaks against it.", reason?.Source ?? Source.CommonPractice),
        ]) { Drawn = damage };

        static string Key(Verdict verdict) => verdict.Word().Replace(' ', '-');
    }

    private static Damage Drawn(SeedStream stream) => stream.Between(0, 6) switch
    {
        0 => new Damage(DamageKind.Bulge, DamagePlace.Sidewall, Length.FromMillimetres(stream.Between(8, 40))),
        1 => new Damage(DamageKind.Cut, DamagePlace.Sidewall, Length.FromMillimetres(stream.Between(5, 45))) { Depth = Length.FromMillimetres(stream.Between(5, 30) / 10.0), CordShows = false },
        2 => new Damage(DamageKind.Cord, DamagePlace.Shoulder, Length.FromMillimetres(stream.Between(5, 30))),
        3 => new Damage(DamageKind.Puncture, DamagePlace.Sidewall, Length.FromMillimetres(stream.Between(2, 6))),
        4 => new Damage(DamageKind.Puncture, DamagePlace.Tread, Length.FromMillimetres(stream.Between(2, 10))) { FromMiddle = Length.FromMillimetres(stream.Between(0, 95)), Lean = Angle.FromDegrees(stream.Between(0, 20)), CordShows = false },
        5 => new Damage(DamageKind.Separation, DamagePlace.Tread, Length.FromMillimetres(stream.Between(20, 90))),
        _ => new Damage(DamageKind.RunLowMarks, DamagePlace.Sidewall, null),
    };

    private static string Words(Damage damage)
    {
        var parts = new List<string> { $"{DamageCheck.KindWord(damage.Kind)}, {DamageCheck.PlaceWord(damage.Place)}" };
        Add("", damage.Size?.Text("mm", 0));
        Add("depth by the probe ", damage.Depth?.Text("mm", 1));
        Add("from the middle of the tread ", damage.FromMiddle?.Text("mm", 0));
        Add("leaning ", damage.Lean is { } lean ? $"{Asking.Text(lean.Degrees, 0)}°" : null);
        if (damage.CordShows == false)
        {
            parts.Add("no cord shows");
        }

        return string.Join(", ", parts);

        void Add(string before, string? value)
        {
            if (value is not null)
            {
                parts.Add(before + value);
            }
        }
    }
}
