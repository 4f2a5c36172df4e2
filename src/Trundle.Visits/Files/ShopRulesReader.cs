using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>
/// Reads a workshop's own rules: stricter limits beside those that are carried, and corrections of carried rules by somebody who read the text. What could
/// not be meant is a problem with its place: an unknown quantity, a correction without a text. A limit that is no stricter is refused in a workshop's file;
/// in a visit, which took its rules along when it was opened, the carried ones may have become stricter since: there it is a caution, and the stricter holds.
/// </summary>
public static class ShopRulesReader
{
    private const int MostRules = 200;

    private static readonly (string, Category)[] Categories = [.. new[] { Category.Minor, Category.Refer, Category.Major, Category.Dangerous }.Select(c => (c.Word(), c))];

    /// <summary>Reads the rules that a visit took along; what is carried where there is a problem.</summary>
    public static RulesInForce Read(FileObject o) => Read(o, refuses: false);

    /// <summary>Reads a workshop's file, in which a limit that is no stricter is a problem.</summary>
    public static RulesInForce ReadFile(FileObject o) => Read(o, refuses: true);

    private static RulesInForce Read(FileObject o, bool refuses)
    {
        ArgumentNullException.ThrowIfNull(o);
        var overtaken = new List<string>();
        var before = o.Problems.Count;
        var corrections = Corrections(o, refuses, overtaken);
        var corrected = o.Problems.Count == before ? RulesInForce.With([], corrections) : RulesInForce.Carried;
        var added = new List<ShopRule>();
        foreach (var item in o.Objects("rules"))
        {
            if (ReadRule(item, corrected, refuses ? null : overtaken) is not { } rule)
            {
                continue;
            }

            if (added.Exists(r => r.Rule.Rule == rule.Rule.Rule))
            {
                item.Wrong("id", "rule-twice", $"'{rule.Rule.Rule[ShopRule.Prefix.Length..]}' stands twice; each rule has a name of its own.");
            }

            added.Add(rule);
        }

        if (added.Count > MostRules)
        {
            o.Wrong("rules", "too-many", $"There are {added.Count.ToString(CultureInfo.InvariantCulture)} rules; at most {MostRules.ToString(CultureInfo.InvariantCulture)} are read.");
        }

        o.Done();
        return o.Problems.Count == before ? RulesInForce.With(added, corrections, overtaken) : RulesInForce.Carried;
    }

    private static ShopRule? ReadRule(FileObject o, RulesInForce corrected, List<string>? overtaken)
    {
        var before = o.Problems.Count;
        var id = o.Require("id", "give the rule a short name, for example tread") ? o.Reference("id", Name) : null;
        var quantity = o.Require("quantity", $"say what it judges: {Words(JudgedQuantities.Words)}") ? o.Word("quantity", [.. JudgedQuantities.Words]) : null;
        var holds = o.Require("holds", $"say how a value must stand to the limit: {Words(InUseLimits.Comparisons)}") ? o.Word("holds", [.. InUseLimits.Comparisons]) : null;
        var limit = ReadLimit(o, quantity, required: true);
        var category = o.Require("category", "say how grave a breach is: minor, refer, major or dangerous") ? o.Word("category", Categories) : null;
        var text = o.Require("text", "say the rule in a sentence") ? o.Text("text") : null;
        var action = o.Require("action", "say what to do about a breach") ? o.Text("action") : null;
        var source = o.Require("source", "say whose rule it is and since when, for example \"Workshop rule of 2026-03-01\"") ? o.Text("source") : null;
        var sets = Sets(o);
        var scope = new RuleScope(Classes(o), o.Word("place", [.. RuleScope.Places.Where(p => p.Word.Length > 0)]) ?? RulePlace.Anywhere);
        var dates = new RuleDates(o.Date("from"), o.Date("until"), o.Reference("season", Season.Read));
        var country = o.Reference("country", VisitFileReader.ReadCountry);
        if (dates is { From: { } from, Until: { } until } && from > until)
        {
            o.Wrong("until", "dates-backwards", "The last day comes before the first.");
        }

        o.Done();
        if (o.Problems.Count > before || id is null || quantity is not { } judged || holds is not { } comparison || limit is not { } value || category is not { } grave)
        {
            return null;
        }

        var name = ShopRule.Prefix + id;
        var document = Bare(source!);
        var own = new InUseLimit(name, name, null, country, judged, comparison, value.Value, value.Unit, scope, dates, text!, new Source(document, SourceStatus.Read));
        var carried = StricterThan(own, sets, grave, corrected);
        if (own.IsFloor != JudgedQuantities.IsFloor(judged))
        {
            o.Wrong("holds", "holds-backwards", $"A limit of the {JudgedQuantities.Word(judged)} is kept {(own.IsFloor ? "at most or below" : "at least or above")} it; '{InUseLimits.Comparisons.Single(c => c.Value == comparison).Word}' would forbid what is good.");
        }
        else if (carried is not null && overtaken is not null)
        {
            overtaken.Add($"The workshop's rule '{name}' ({Said(own)}) is no stricter than {Said(carried)}, the rule '{carried.Id}' that is carried: the stricter holds. Put the workshop's file right.");
        }
        else if (carried is not null)
        {
            o.Wrong("limit", "not-stricter", $"{Said(own)} is no stricter than {Said(carried)}, the rule '{carried.Id}', for vehicles and places that both name. A workshop's rule is stricter: change the limit, name the ruleSets, classes or place that it is meant for, or write a correction of '{carried.Id}' with the text that says so.");
        }

        return new ShopRule(new InUseRule(name, null, grave, false, document, "", "", SourceStatus.Read, text!, action!), own, sets);
    }

    /// <summary>The carried limit that a rule of the same or a lesser gravity would stand behind, or null.</summary>
    private static InUseLimit? StricterThan(InUseLimit own, IReadOnlyList<RuleSet> sets, Category category, RulesInForce corrected) =>
        corrected.Limits.FirstOrDefault(l => l.Quantity == own.Quantity
            && (l.Set is not { } set || sets.Count == 0 || sets.Contains(set))
            && (l.Country is null || l.Country == own.Country)
            && l.Scope.Meets(own.Scope) && l.Dates.Meet(own.Dates)
            && corrected.AsPutRight(InUseRules.Of(l.Rule, l.Set)).Category >= category
            && !own.IsStricterThan(l));

    private static List<RuleCorrection> Corrections(FileObject o, bool refuses, List<string> cautions)
    {
        var read = new List<RuleCorrection>();
        foreach (var item in o.Objects("corrections"))
        {
            var id = item.Require("rule", "name the rule as the list of rules does, for example uk.tread.depth") ? item.Text("rule") : null;
            var limit = id is null ? null : InUseLimits.List.FirstOrDefault(l => l.Id == id);
            var rule = id is null ? null : InUseRules.List.Concat(MixingRules.List.Select(m => m.InUse)).FirstOrDefault(r => r.Id == id);
            if (id is not null && limit is null && rule is null)
            {
                item.Wrong("rule", "rule-unknown", $"'{NumberText.Shown(id)}' is no rule that is carried{(FileObject.Nearest(id, InUseLimits.List.Select(l => l.Id).Concat(InUseRules.List.Select(r => r.Id)).Distinct()) is { } near ? $"; did you mean '{near}'?" : ".")} The list of rules names them all.");
            }

            if (item.Has("limit") && limit is null && rule is not null)
            {
                item.Wrong("limit", "no-limit", $"'{id}' has no number of its own.{Parts(rule)}");
            }

            var value = ReadLimit(item, limit?.Quantity, required: false);
            var category = item.Word("category", Categories);
            if (category is not null && rule is null && limit is not null)
            {
                item.Wrong("category", "no-category", $"How grave a breach is belongs to the rule '{RuleSetWords.Of(limit.Set)}.{limit.Rule}'; correct it there.");
            }

            if (category is { } lowered && rule is { Category: Category.Dangerous } && lowered < Category.Dangerous)
            {
                item.Wrong("category", "dangerous-stays", $"'{id}' is dangerous where it is broken, and a correction makes it no less grave. Leave the category out; a wrong text of ours is put right in a release.");
            }

            var lowersLaw = category is { } less && rule is { Set: not null } && less < rule.Category && rule.Category < Category.Dangerous;
            var source = item.Require("source", "a correction names the text that says so") ? item.Text("source") : null;
            var clause = item.Text("clause") ?? "";
            var edition = item.Text("edition") ?? "";
            var status = item.Require("status", "say how the text came to you: read, or second-hand") ? item.Word("status", ("read", SourceStatus.Read), ("second-hand", SourceStatus.SecondHand)) : null;
            item.Done();
            if (id is null || source is null || status is not { } known || (limit is null && rule is null))
            {
                continue;
            }

            if (read.Exists(c => c.Id == id))
            {
                item.Wrong("rule", "rule-twice", $"'{id}' is put right twice; say it once.");
                continue;
            }

            var correction = new RuleCorrection(id, value?.Value, value?.Unit ?? "", category, Bare(source), clause, edition, known);
            if (lowersLaw && !correction.IsByEdition)
            {
                var graver = $"'{id}' is {rule!.Category.Word()} by the law's own row, and a correction calls it {category!.Value.Word()}";
                if (refuses)
                {
                    item.Wrong("category", "less-grave", $"{graver}. A breach of a law is called less grave only where a text that you read says so: state its clause and edition, with status read, or leave the category out.");
                }

                cautions.Add($"A correction of the workshop changes nothing here: {graver}, and it states no clause and edition of a text that was read. The graver holds. Put the workshop's file right.");
                continue;
            }

            if (lowersLaw)
            {
                cautions.Add($"The workshop's correction holds here: '{id}' is called {category!.Value.Word()}, no longer {rule!.Category.Word()}. By {correction.Document}, {correction.Clause} (edition: {correction.Edition}).");
            }

            if (limit is null || !correction.IsLooserThan(limit) || Loosened(item, correction, limit, refuses, cautions))
            {
                read.Add(correction);
            }
        }

        return read;
    }

    /// <summary>
    /// A number that lets pass what the carried one does not: taken with a caution on every answer where clause and edition of a text that was read are given; else
    /// refused in a workshop's file, and in a visit, which cannot mend the file, the carried number stays with its own source. True where it is taken.
    /// </summary>
    private static bool Loosened(FileObject o, RuleCorrection correction, InUseLimit limit, bool refuses, List<string> cautions)
    {
        var looser = $"{Said(limit with { Value = correction.Value!.Value, Unit = correction.Unit })} is looser than {Said(limit)}, the limit '{limit.Id}' that is carried";
        if (correction.IsByEdition)
        {
            cautions.Add($"The workshop's correction holds here: {looser} ({limit.Source.Text}). By {correction.Document}, {correction.Clause} (edition: {correction.Edition}).");
            return true;
        }

        if (refuses)
        {
            o.Wrong("limit", "looser", $"{looser}. A workshop may be stricter; a looser number stands only where a newer edition of the text has it: state its clause and edition, with status read, or leave the limit out.");
        }

        cautions.Add($"A correction of the workshop changes nothing here: {looser}, and it states no clause and edition of a text that was read. The stricter holds. Put the workshop's file right.");
        return false;
    }

    private static (double Value, string Unit)? ReadLimit(FileObject o, JudgedQuantity? quantity, bool required)
    {
        if (required && !o.Require("limit", "give the limit with its unit, for example \"3 mm\""))
        {
            return null;
        }

        return o.Value("limit", text => quantity is { } judged ? JudgedQuantities.ReadLimit(judged, text) : Reading<(double, string)>.Of((0, "")));
    }

    private static List<RuleSet> Sets(FileObject o)
    {
        var sets = new List<RuleSet>();
        foreach (var item in o.Items("ruleSets"))
        {
            if (VisitFileReader.RuleWords.Where(w => w.Word == item.Text).Select(w => (RuleSet?)w.Value).FirstOrDefault() is { } set)
            {
                sets.Add(set);
            }
            else
            {
                o.Problems.Add(new Problem(item.Path, "word-unknown", $"'{NumberText.Shown(item.Text)}' is not a word here; write {Words(VisitFileReader.RuleWords)}."));
            }
        }

        return sets;
    }

    private static List<string> Classes(FileObject o)
    {
        IReadOnlyList<string> known = [.. VehicleClasses.All, RuleScope.Light, RuleScope.Heavy];
        var classes = new List<string>();
        foreach (var item in o.Items("classes"))
        {
            if (known.Contains(item.Text))
            {
                classes.Add(item.Text);
            }
            else
            {
                o.Problems.Add(new Problem(item.Path, "word-unknown", $"'{NumberText.Shown(item.Text)}' is not a word here; write {ChoiceText.Of(known)}."));
            }
        }

        return classes;
    }

    /// <summary>Letters, digits, dashes and points: it becomes part of the finding's name.</summary>
    private static Reading<string> Name(string text) => text.Length <= 40 && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '-' or '.') && text[0] is not ('.' or '-')
        ? Reading<string>.Of(text)
        : Reading<string>.Failed("name-unreadable", $"'{NumberText.Shown(text)}' is not a name of a rule; write up to 40 small letters, digits, dashes and points, for example tread.winter.");

    /// <summary>A source that is called common practice has no text; a workshop's word is its own.</summary>
    private static string Bare(string source) => source == Source.CommonPracticeText ? "common practice of the workshop" : source;

    private static string Said(InUseLimit limit) => $"'{InUseLimits.Comparisons.Single(c => c.Value == limit.Holds).Word} {limit.Text}'";

    private static string Words<T>(IEnumerable<(string Word, T Value)> words) => ChoiceText.Of(words.Select(w => w.Word));

    /// <summary>The limits of a rule that go by names of their own.</summary>
    private static string Parts(InUseRule rule)
    {
        var parts = InUseLimits.List.Where(l => l.Rule == rule.Rule && l.Set == rule.Set).Select(l => l.Id).ToList();
        return parts.Count == 0 ? "" : $" Its limits are {string.Join(", ", parts)}.";
    }
}
