using System.Globalization;
using System.Text.RegularExpressions;
using Trundle.Engine.Condition;
using Trundle.Engine.Practice;
using Trundle.Engine.Practice.Drills;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Practice;

/// <summary>Each drill against an answer worked out here in another way from what it tells.</summary>
public sealed partial class DrillTests
{
    private static readonly DateOnly Today = new(2026, 3, 2);

    public static TheoryData<DrillKind> Kinds => [.. Enum.GetValues<DrillKind>()];

    [Theory, MemberData(nameof(Kinds))]
    public void Every_seed_makes_a_drill_worth_a_hundred_points_and_says_what_was_right_where_it_was_wrong(DrillKind kind)
    {
        for (ulong seed = 0; seed < 300; seed++)
        {
            var drill = DrillList.Of(kind, seed, Today);
            drill.Criteria.Sum(c => c.Points).ShouldBe(100);
            drill.Criteria.Count(c => c.MustBeMet).ShouldBeGreaterThan(0);
            DrillList.Of(kind, seed, Today).Facts.ShouldBe(drill.Facts);
            var nothing = drill.Judge(new Dictionary<string, string>());
            (nothing.Passed, nothing.Score).ShouldBe((false, 0));
            foreach (var question in drill.Questions)
            {
                // Of every choice, some are right and some wrong, and a wrong one says why; an unreadable value says how it is written.
                var held = question.Choices.Select(c => question.Hold(c.Key)).ToList();
                if (held.Count > 0)
                {
                    held.ShouldContain(h => h.Met);
                    held.ShouldContain(h => !h.Met);
                    held.Where(h => !h.Met).ShouldAllBe(h => h.Feedback.Length > 12 && h.Required != null);
                }
                else
                {
                    question.Hold("much").Feedback.ShouldNotBeEmpty();
                }
            }
        }
    }

    [Fact]
    public void Pressures_are_those_of_the_ideal_gas()
    {
        Try(DrillKind.PressureAtTemperature, drill =>
        {
            var numbers = Numbers(string.Join(" ", drill.Facts.Take(3).Select(f => f.Text)));
            var (set, inside, outside, warm) = (numbers[0], numbers[1], numbers[2], numbers[3]);
            return Answers(("cold", $"{F(At(outside))} kPa"), ("warm", F(At(warm))), ("act", "leave"));

            double At(double celsius) => ((set + 101.325) * (celsius + 273.15) / (inside + 273.15)) - 101.325;
        });
        var bled = DrillList.Of(DrillKind.PressureAtTemperature, 1, Today).Questions[2].Hold("bleed");
        bled.Met.ShouldBeFalse();
        bled.Feedback.ShouldContain("it would be low cold");
    }

    [Fact]
    public void A_setting_follows_the_arm_that_the_adapter_leaves() => Try(DrillKind.Adapter, drill =>
    {
        var n = drill.Facts.Select(f => Numbers(f.Text)[0]).ToList();
        var gain = (n[1] + (n[2] * Math.Cos(n[3] * Math.PI / 180))) / n[1];
        return Answers(("setting", F(n[0] / gain)), ("delivered", F(n[0] * gain)), ("square", "no"));
    }).ShouldBe(200);

    [Fact]
    public void A_sidewall_is_read_by_its_own_digits_and_the_published_tables()
    {
        var speeds = new Dictionary<string, int> { ["Q"] = 160, ["S"] = 180, ["T"] = 190, ["H"] = 210, ["V"] = 240, ["W"] = 270 };
        var loads = new Dictionary<int, int> { [75] = 387, [80] = 450, [84] = 500, [87] = 545, [88] = 560, [91] = 615, [94] = 670, [95] = 690, [100] = 800, [104] = 900 };
        var looked = 0;
        for (ulong seed = 0; seed < 400; seed++)
        {
            var drill = DrillList.Of(DrillKind.Sidewall, seed, Today);
            var m = Marking().Match(drill.Facts[0].Text);
            var (width, ratio, rim, load) = (Int(1), Int(2), Int(3), Int(4));
            if (!loads.TryGetValue(load, out var kilograms))
            {
                continue;
            }

            looked++;
            var result = drill.Judge(Answers(("width", $"{width} mm"), ("height", F(width * ratio / 100.0)), ("rim", $"{rim}"), ("load", $"{kilograms} kg"), ("speed", $"{speeds[m.Groups[5].Value]}")));
            (result.Passed, result.Score).ShouldBe((true, 100), drill.Facts[0].Text);
            drill.Judge(Answers(("load", $"{load} kg"))).Parts[3].Feedback.ShouldContain("looked up");

            int Int(int group) => int.Parse(m.Groups[group].Value, CultureInfo.InvariantCulture);
        }

        looked.ShouldBeGreaterThan(60);
    }

    [Fact]
    public void A_TIN_tells_week_and_year_by_its_last_four_digits() => Try(DrillKind.Tin, drill =>
    {
        var four = drill.Facts[0].Text[^4..];
        var (week, year) = (int.Parse(four[..2], CultureInfo.InvariantCulture), 2000 + int.Parse(four[2..], CultureInfo.InvariantCulture));
        return Answers(("week", $"{week}"), ("year", $"{year}"), ("age", F((Today.DayNumber - new DateOnly(year, 1, 1).DayNumber - (7 * (week - 0.5))) / 365.25)));
    }).ShouldBe(200);

    [Fact]
    public void A_tread_is_judged_by_its_least_depth() => Try(DrillKind.Tread, drill =>
    {
        var least = ((TreadDepths)drill.Drawn!).All.Min(d => d.Depth.Millimetres);

        // 2/32 in for the United States, 1.6 mm for the United Kingdom and the European Union, for cars.
        var limit = drill.Facts[1].Text == "United States" ? 1.5875 : 1.6;
        return Answers(("least", F(least)), ("limit", F(limit)), ("verdict", least >= limit ? "yes" : "no"));
    }).ShouldBe(200);

    [Fact]
    public void Constructions_are_judged_by_axle_and_from_front_to_rear()
    {
        var kinds = new HashSet<(bool, bool)>();
        Try(DrillKind.Mixing, drill =>
        {
            var built = drill.Facts.Skip(1).Select(f => f.Text[(f.Text.IndexOf('(', StringComparison.Ordinal) + 1)..^1]).ToList();
            var axle = built[0] != built[1] || built[2] != built[3];
            int[] rank = [.. built.Select(b => b switch { "diagonal" => 0, "bias-belted" => 1, _ => 2 })];

            // The United Kingdom's rule and the trade's alike: nothing stiffer in front; the other rules' own texts say less, so only those are tried.
            var front = rank[0] > rank[2] || rank[0] > rank[3];
            kinds.Add((axle, front));
            return drill.Facts[0].Text == "United Kingdom" ? Answers(("may", axle || front ? "no" : "yes"), ("axle", axle ? "yes" : "no")) : null;
        }).ShouldBeGreaterThan(40);
        kinds.Count.ShouldBeGreaterThan(2);
    }

    [Fact]
    public void A_rotation_follows_drive_direction_and_size() => Try(DrillKind.Rotation, drill =>
    {
        var (drive, front, rear, directional) = (drill.Facts[0].Text, drill.Facts[1].Text, drill.Facts[2].Text, drill.Facts[3].Text.StartsWith("directional", StringComparison.Ordinal));
        var choose = (directional, front == rear, drive) switch
        {
            (true, false, _) => "none",
            (true, true, _) => "front-to-rear",
            (false, false, _) => "side-to-side",
            (false, true, "front wheels driven") => "forward cross",
            _ => "rearward cross",
        };
        return Answers(("choose", choose), ("cross", directional ? "no" : "yes"));
    }).ShouldBe(200);

    [Fact]
    public void A_damage_that_discards_a_tyre_and_is_let_run_ends_the_attempt()
    {
        var stops = 0;
        var verdicts = new HashSet<string>();
        for (ulong seed = 0; seed < 200; seed++)
        {
            var drill = DrillList.Of(DrillKind.Damage, seed, Today);
            var right = drill.Questions[0].Choices.Single(c => drill.Questions[0].Hold(c.Key).Met);
            verdicts.Add(right.Words);
            var damage = (Damage)drill.Drawn!;
            if (damage.Kind is DamageKind.Bulge or DamageKind.Cord or DamageKind.Separation)
            {
                // Common practice, and every rule set: bulge, bare cord and separation never run again.
                right.Words.ShouldBeOneOf(Verdict.Renew.Word(), Verdict.Discard.Word());
                drill.Judge(Answers(("verdict", "may-run"), ("drive", "yes"))).Stop.ShouldNotBeNull();
                stops++;
            }
            else if (damage is { Kind: DamageKind.Puncture, Place: DamagePlace.Sidewall })
            {
                right.Words.ShouldNotBe(Verdict.Repair.Word());
            }
        }

        stops.ShouldBeGreaterThan(30);
        verdicts.Count.ShouldBeGreaterThan(2);
    }

    [Fact]
    public void A_demount_passes_in_every_order_that_keeps_what_each_step_needs()
    {
        string[] good = [.. DemountDrill.Deeds.Where(d => !d.IsTrap).Select(d => d.Key)];
        var drill = DemountDrill.Of(5);
        drill.Judge(good).Passed.ShouldBeTrue();

        // Weights off before or after the core, rim and valve in either order.
        drill.Judge(Moved(good, "weights-off", "core-out")).Passed.ShouldBeTrue();
        drill.Judge(Moved(good, "rim-check", "valve")).Passed.ShouldBeTrue();
        drill.Judge(Moved(good, "core-out", "bead-breaking")).Stop!.Key.ShouldBe("bead-breaking");
        drill.Judge(Moved(good, "clamps-released", "seat")).Stop!.Key.ShouldBe("seat");
        drill.Judge(Moved(good, "rim-check", "mount")).Stop!.Key.ShouldBe("mount");
        drill.Judge(Moved(good, "bead-line", "core-in")).Passed.ShouldBeFalse();
        drill.Judge([.. good.Skip(1)]).Passed.ShouldBeFalse();
        foreach (var trap in DemountDrill.Deeds.Where(d => d.IsTrap))
        {
            drill.Judge([.. good, trap.Key]).Stop!.Why.ShouldBe(trap.Stop);
        }

        DemountDrill.Of(7).Offered.Count(d => d.IsTrap).ShouldBe(2);

        // Behind a later one where it stands before it; as it is otherwise.
        static string[] Moved(string[] keys, string key, string behind)
        {
            if (Array.IndexOf(keys, key) > Array.IndexOf(keys, behind))
            {
                return keys;
            }

            var list = keys.Where(k => k != key).ToList();
            list.Insert(list.IndexOf(behind) + 1, key);
            return [.. list];
        }
    }

    private static int Try(DrillKind kind, Func<Drill, Dictionary<string, string>?> answer)
    {
        var tried = 0;
        for (ulong seed = 0; seed < 200; seed++)
        {
            var drill = DrillList.Of(kind, seed, Today);
            if (answer(drill) is { } answers)
            {
                var result = drill.Judge(answers);
                (result.Passed, result.Score).ShouldBe((true, 100), $"{seed}: {string.Join("; ", drill.Facts)} {string.Join("; ", result.Parts.Where(p => !p.Met).Select(p => p.Feedback))}");
                tried++;
            }
        }

        return tried;
    }

    private static Dictionary<string, string> Answers(params (string Key, string Value)[] answers) => answers.ToDictionary(a => a.Key, a => a.Value);

    private static string F(double value) => value.ToString("F2", CultureInfo.InvariantCulture);

    private static List<double> Numbers(string text) => [.. Number().Matches(text).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture))];

    [GeneratedRegex(@"(?<![\w.])-?\d+(?:\.\d+)?")]
    private static partial Regex Number();

    [GeneratedRegex(@"(\d+)/(\d+) R(\d+) (\d+)([A-Z])")]
    private static partial Regex Marking();
}
