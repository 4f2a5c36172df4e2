using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Tests.InUse;

/// <summary>Every limit that is carried, at, just inside and just outside, by the checks themselves. The cases are made of the data, so no row is left out.</summary>
public sealed class LimitTests
{
    public static TheoryData<string> Ids => [.. RulesInForce.Carried.Limits.Select(l => l.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void At_inside_and_outside(string id) => Holds(RulesInForce.Carried.Limits.Single(l => l.Id == id), RulesInForce.Carried);

    /// <summary>Holds a limit against vehicles on, below and above it, of every class that it names.</summary>
    internal static void Holds(InUseLimit limit, RulesInForce inForce, RuleSet? set = null)
    {
        var step = LimitVehicles.Step(limit.Quantity);
        foreach (var vehicleClass in LimitVehicles.Classes(limit))
        {
            var said = new List<bool>();
            foreach (var wanted in new[] { limit.Compared - step, limit.Compared, limit.Compared + step })
            {
                var vehicle = LimitVehicles.Make(limit, vehicleClass, wanted, inForce, set);
                vehicle.Value.ShouldBe(wanted, step);
                var broken = limit.Holds switch
                {
                    Comparison.AtLeast => vehicle.Value < limit.Compared - (step / 10),
                    Comparison.Above => vehicle.Value < limit.Compared + (step / 10),
                    Comparison.AtMost => vehicle.Value > limit.Compared + (step / 10),
                    Comparison.Below => vehicle.Value > limit.Compared - (step / 10),
                };
                said.Add(broken);
                if (broken && TakenOver(limit, vehicle, inForce))
                {
                    continue;
                }

                vehicle.Breaks(limit).ShouldBe(broken, string.Create(CultureInfo.InvariantCulture, $"{limit.Id}, {vehicleClass}: {vehicle.Value} against {limit.Holds} {limit.Compared}"));
            }

            said.Distinct().Count().ShouldBe(2, $"{limit.Id} is tried on both sides");
        }
    }

    /// <summary>A graver rule on the same quantity is broken too and is said in its place: below the least depth nobody is told that the indicators show.</summary>
    private static bool TakenOver(InUseLimit limit, LimitVehicle vehicle, RulesInForce inForce) =>
        Graver.TryGetValue(limit.Rule, out var graver) && inForce.Limits.Any(l => l.Rule == graver && l.Set == limit.Set && l.IsBrokenBy(vehicle.Value));

    private static readonly Dictionary<string, string> Graver = new() { ["tread.wear-indicator"] = "tread.depth", ["pressure.run-low"] = "pressure.warning" };

    [Fact]
    public void Every_limit_has_a_rule_a_source_and_a_name_of_its_own()
    {
        InUseLimits.List.Select(l => l.Id).Distinct().Count().ShouldBe(InUseLimits.List.Count);
        foreach (var limit in InUseLimits.List)
        {
            InUseRules.List.ShouldContain(r => r.Rule == limit.Rule && (r.Set == limit.Set || r.Set == null), limit.Id);
            limit.Id.ShouldStartWith(RuleSetWords.Of(limit.Set) + ".");
            limit.What.ShouldEndWith(".");
            limit.Source.Text.Length.ShouldBeGreaterThan(4);
            limit.Scope.Classes.ShouldAllBe(c => VehicleClasses.All.Contains(c) || c == RuleScope.Heavy || c == RuleScope.Light);
        }
    }

    /// <summary>Two limits of one rule at one place would leave open which of them counts.</summary>
    [Fact]
    public void One_rule_has_one_limit_for_one_vehicle_at_one_place()
    {
        foreach (var limit in RulesInForce.Carried.Limits)
        {
            foreach (var vehicleClass in LimitVehicles.Classes(limit))
            {
                var made = LimitVehicles.Make(limit, vehicleClass, limit.Compared);
                var position = made.At is { Length: 2 or 3 } at ? Position.Read(at).Value : (Position?)null;
                var diameter = made.Subject.Fitted[0].Tyre!.Marking!.Size.OverallDiameter;
                var others = RulesInForce.Carried.Limits.Where(l => l.Rule == limit.Rule && l.Quantity == limit.Quantity && l.Set == limit.Set && l.HoldsAt(new RulePoint(made.Subject, position, diameter)));
                others.ShouldHaveSingleItem($"{limit.Id}, {vehicleClass}").Id.ShouldBe(limit.Id);
            }
        }
    }

    /// <summary>The first and the last day of each limit that has dates, and the days beside them.</summary>
    [Fact]
    public void A_limit_holds_on_its_first_and_last_day_and_not_beside_them()
    {
        var tried = 0;
        foreach (var limit in InUseLimits.List)
        {
            if (limit.Dates.From is { } from)
            {
                var first = Enumerable.Range(0, 366).Select(d => from.AddDays(d)).First(d => limit.Dates.Hold(d));
                limit.Dates.Hold(from.AddDays(-1)).ShouldBeFalse(limit.Id);
                (first == from || limit.Dates.Season is not null).ShouldBeTrue(limit.Id);
                tried++;
            }

            if (limit.Dates.Until is { } until)
            {
                limit.Dates.Hold(until.AddDays(1)).ShouldBeFalse(limit.Id);
                tried++;
            }

            if (limit.Dates.Season is { } season)
            {
                var year = (limit.Dates.Until ?? new DateOnly(2026, 1, 1)).Year - 1;
                var (first, last) = (new DateOnly(year, season.First.Month, season.First.Day), new DateOnly(year, season.Last.Month, season.Last.Day));
                foreach (var (day, holds) in new[] { (first.AddDays(-1), false), (first, true), (last, true), (last.AddDays(1), false) })
                {
                    limit.Dates.Hold(day).ShouldBe(holds, $"{limit.Id} on {day:O}");
                }

                tried++;
            }
        }

        tried.ShouldBeGreaterThan(6);
    }

    [Fact]
    public void A_season_over_the_new_year_holds_on_both_sides_of_it_and_29_february_is_a_day()
    {
        var winter = Season.Read("11-01 to 04-15").Value;
        winter.Holds(new DateOnly(2026, 12, 31)).ShouldBeTrue();
        winter.Holds(new DateOnly(2027, 1, 1)).ShouldBeTrue();
        winter.Holds(new DateOnly(2028, 2, 29)).ShouldBeTrue();
        winter.Holds(new DateOnly(2026, 7, 1)).ShouldBeFalse();
        Season.Read("02-29 to 03-01").Value.Holds(new DateOnly(2028, 2, 29)).ShouldBeTrue();
        winter.ToString().ShouldBe("11-01 to 04-15");
        foreach (var wrong in new[] { "11-01", "13-01 to 04-15", "1 November to 15 April", "02-30 to 03-01", "" })
        {
            Season.Read(wrong).IsRead.ShouldBeFalse(wrong);
        }
    }
}
