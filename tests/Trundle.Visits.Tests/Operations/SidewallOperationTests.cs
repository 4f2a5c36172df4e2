using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

/// <summary>The command <c>sidewall</c> in the contract's keys.</summary>
public sealed class SidewallOperationTests
{
    [Fact]
    public void The_least_keys_of_the_contract_stand_with_their_values()
    {
        var body = Run("205/55 R16 91V", "DOT 1AB CDEFHJ 2218", "2026-03-14").Value.Body;
        var size = body["size"]!.AsObject();
        Text(size["tyreClass"]).ShouldBe("passenger");
        Number(size["sectionWidthMillimetres"]).ShouldBe(205, 1e-9);
        Number(size["designSectionWidthMillimetres"]).ShouldBe(214, 1e-9);
        Number(size["aspectRatioPercent"]).ShouldBe(55);
        Text(size["construction"]).ShouldBe("radial");
        size["constructionToBeRead"]!.GetValue<bool>().ShouldBeFalse();
        Number(size["rimDiameterInches"]).ShouldBe(16);
        size["rimDiameterMillimetres"].ShouldBeNull();
        Number(size["overallDiameterMillimetres"]).ShouldBe(632, 1e-9);

        var service = body["service"]!.AsObject();
        service["loadIndexSingle"]!.GetValue<int>().ShouldBe(91);
        service.ContainsKey("loadIndexDual").ShouldBeTrue();
        service["loadIndexDual"].ShouldBeNull();
        Text(service["speedSymbol"]).ShouldBe("V");
        Number(service["loadSingleKilograms"]).ShouldBe(615, 1e-9);
        service["loadDualKilograms"].ShouldBeNull();
        Number(service["speedKilometresPerHour"]).ShouldBe(240, 1e-9);
        service["loadRange"].ShouldBeNull();
        service["extraLoad"]!.GetValue<bool>().ShouldBeFalse();

        var tin = body["tin"]!.AsObject();
        Text(tin["plant"]).ShouldBe("1AB");
        tin["week"]!.GetValue<int>().ShouldBe(22);
        tin["year"]!.GetValue<int>().ShouldBe(2018);
        Number(tin["ageYears"]).ShouldBe(2841 / 365.25, 1e-9);
        tin["ambiguousDecade"]!.GetValue<bool>().ShouldBeFalse();
    }

    [Theory]
    [InlineData("205/55R16", "No load index and no speed symbol")]
    [InlineData("P235/75R15", "No load index and no speed symbol")]
    [InlineData("LT235/85R16C", "No load index and no speed symbol")]
    public void A_marking_without_service_description_says_that_null_is_not_zero(string marking, string says)
    {
        var body = Run(marking, null, null).Value.Body;
        body["service"]!["loadSingleKilograms"].ShouldBeNull();
        body["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldContain(c => c.StartsWith(says, StringComparison.Ordinal) && c.Contains("null is not zero", StringComparison.Ordinal));
        Run("205/55 R16 91V", null, null).Value.Body["cautions"]!.AsArray().ShouldBeEmpty();
    }

    /// <summary>Digits glued to the option code: the only date that they can be is read; where they can be two, the other is told.</summary>
    [Theory]
    [InlineData("A1B2CDE1238", "three-digit-date", 23, true, "can be no date on this day")]
    [InlineData("DOT A1B2 CDE1105", "four-digit-date", 11, false, "week 10 of 1975 or 1985 or 1995")]
    [InlineData("DOT A1B2CDE1105", "four-digit-date", 11, false, "week 10 of 1975 or 1985 or 1995")]
    public void A_joined_number_tells_its_other_reading(string text, string form, int week, bool open, string says)
    {
        var tin = Run("205/55 R16 91V", text, "2026-03-14").Value.Body["tin"]!.AsObject();
        Text(tin["form"]).ShouldBe(form);
        tin["week"]!.GetValue<int>().ShouldBe(week);
        tin["ambiguousDecade"]!.GetValue<bool>().ShouldBe(open);
        tin["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldContain(c => c.Contains(says, StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_not_told_is_null_and_stands()
    {
        var body = Run("7.00-15", null, null).Value.Body;
        body.ContainsKey("tin").ShouldBeTrue();
        body["tin"].ShouldBeNull();
        var size = body["size"]!.AsObject();
        foreach (var key in new[] { "designSectionWidthMillimetres", "aspectRatioPercent", "overallDiameterMillimetres", "rimDiameterMillimetres" })
        {
            size.ContainsKey(key).ShouldBeTrue(key);
            size[key].ShouldBeNull(key);
        }

        Text(size["construction"]).ShouldBe("diagonal");
        size["constructionToBeRead"]!.GetValue<bool>().ShouldBeTrue();
        body["service"]!["loadSingleKilograms"].ShouldBeNull();
        body["service"]!["speedKilometresPerHour"].ShouldBeNull();
    }

    [Fact]
    public void An_open_decade_has_no_year_and_no_age()
    {
        var tin = Run("205/55 R16 91V", "DOT A1 B2 CDEF 238", "2026-03-14").Value.Body["tin"]!.AsObject();
        tin["week"]!.GetValue<int>().ShouldBe(23);
        tin["year"].ShouldBeNull();
        tin["ageYears"].ShouldBeNull();
        tin["ambiguousDecade"]!.GetValue<bool>().ShouldBeTrue();
        Number(tin["ageYearsLeast"]).ShouldBeGreaterThan(25);
    }

    [Fact]
    public void Without_a_date_no_age_is_told_and_that_is_said()
    {
        var body = Run("205/55 R16 91V", "DOT 1AB CDEFHJ 2218", null).Value.Body;
        body["tin"]!["ageYears"].ShouldBeNull();
        body["cautions"]!.AsArray().Select(Text).ShouldContain(c => c.Contains("--on", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("205/55R", null, null, "marking", "marking-unknown")]
    [InlineData("", null, null, "marking", "missing")]
    [InlineData("205/55 R16 91V", "DOT 1AB CDEFHJ 5418", null, "tin", "tin-week")]
    [InlineData("205/55 R16 91V", "DOT 1AB CDEFHJ 2230", "2026-03-14", "tin", "tin-date-future")]
    [InlineData("205/55 R16 91V", null, "14.03.2026", "on", "date-unreadable")]
    [InlineData("205/55 R16 91V", " ", null, "tin", "empty")]
    [InlineData("205/55 R16 91V", "2218", "", "on", "empty")]
    public void Wrong_input_names_its_place(string marking, string? tin, string? on, string where, string code)
    {
        var answer = Run(marking, tin, on);
        answer.IsRead.ShouldBeFalse();
        answer.Problem!.Where.ShouldBe(where);
        answer.Problem.Code.ShouldBe(code);
    }

    [Fact]
    public void An_unknown_key_is_refused_with_the_nearest_known_one()
    {
        var answer = SidewallOperation.Operation.Run(FileNode.From(new JsonObject { ["marking"] = "205/55 R16", ["tinn"] = "2218" }));
        answer.Problem!.Where.ShouldBe("tinn");
        answer.Problem.Message.ShouldContain("'tin'");
    }

    [Fact]
    public void A_person_reads_the_same_with_units_and_cautions()
    {
        var lines = Run("LT245/75R16 120/116S NHS", "R 1AB 4019", "2026-03-14").Value.ForPeople;
        lines.ShouldContain(l => l.Contains("1400 kg", StringComparison.Ordinal) && l.Contains("1250 kg", StringComparison.Ordinal));
        lines.ShouldContain(l => l.StartsWith("Caution: NHS", StringComparison.Ordinal));
        lines.ShouldContain(l => l.StartsWith("Caution: Retread", StringComparison.Ordinal));
        lines.ShouldContain(l => l.StartsWith("Age", StringComparison.Ordinal) && l.Contains("6.4 years", StringComparison.Ordinal));
    }

    private static Reading<Answer> Run(string marking, string? tin, string? on)
    {
        var body = new JsonObject { ["marking"] = marking };
        if (tin is not null)
        {
            body["tin"] = tin;
        }

        if (on is not null)
        {
            body["on"] = on;
        }

        return SidewallOperation.Operation.Run(FileNode.From(body));
    }

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    private static string Text(JsonNode? node) => node!.GetValue<string>();
}
