using System.Globalization;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Procedures;

namespace Trundle.Store;

/// <summary>What may not be entered, whoever's tablet it comes from: the server's own word, since a tablet may be old or changed.</summary>
public static class EntryGate
{
    /// <summary>The field that hands a vehicle back.</summary>
    public const string HandBackField = "work.handBack.by";

    /// <summary>The field of whom to call, which may be erased.</summary>
    public const string ContactField = "work.contact";

    /// <summary>The field of the visit's number, which the workshop gives when it opens the visit.</summary>
    public const string NumberField = "work.number";

    /// <param name="entry">What is to be entered.</param>
    /// <param name="before">The visit before it.</param>
    /// <param name="stands">How the visit stands by its fields and the register, asked for only where a vehicle is handed back.</param>
    internal static Problem? Refusal(Entry entry, VisitFields before, Func<List<Problem>, VisitState> stands)
    {
        if (!Entry.IsField(entry.Field))
        {
            return new Problem("field", "field-unreadable", $"'{NumberText.Shown(entry.Field)}' is not a field of a visit; a field reads like fitted.1L.tread.inner.0.");
        }

        if (entry.Typed.Length > Entry.MostCharacters)
        {
            return new Problem(entry.Field, "too-long", string.Create(CultureInfo.InvariantCulture, $"There are {entry.Typed.Length} characters; at most {Entry.MostCharacters} are kept in one field."));
        }

        if (entry.Typed.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t')) || HasHalfCharacter(entry.Typed))
        {
            return new Problem(entry.Field, "not-text", "There is a character in it that cannot be written; type it again.");
        }

        if (WorkshopRules.IsField(entry.Field) && before[NumberField] is not null && !(entry.Typed.Length == 0 && entry.Role.May(Right.TakeRuleOff)))
        {
            return new Problem(entry.Field, "rules-of-the-workshop", "The workshop's own rules come with the visit when it is opened; change the workshop's file for the next visit. An instructor or the owner may take one away.");
        }

        if (WorkshopProcedure.IsField(entry.Field) && before[NumberField] is not null)
        {
            return new Problem(entry.Field, "procedure-of-the-workshop", "The workshop's own procedure comes with the visit when it is opened, and the visit keeps it; change the workshop's for the next visit.");
        }

        if (entry.Field.EndsWith(".wheel.multiPiece", StringComparison.Ordinal) && before[entry.Field] == "true" && entry.Typed != "true" && !entry.Role.May(Right.TakeBackStop))
        {
            return new Problem(entry.Field, "may-not-release", "It was entered that this rim is of several pieces. Only an instructor or the owner, who looks at it, may put that right.");
        }

        if ((StandsUnder(entry.Field, Permission.List) || StandsUnder(entry.Field, SignedOff.Root)) && !entry.Role.May(Right.PermitTrainee))
        {
            return new Problem(entry.Field, "may-not-permit", $"A {entry.Role.Word()} may not permit a trainee a hazardous act, nor sign off a trainee's work; an instructor or the owner does.");
        }

        if (StandsUnder(entry.Field, TraineeStep.Root) && before[NumberField] is not null)
        {
            return new Problem(entry.Field, "not-typed", "Who recorded a step is who entered it; nobody types that.");
        }

        if (entry.Field == HandBackField && entry.Typed.Length > 0 && HandBack(entry, stands) is { } problem)
        {
            return problem;
        }

        if (entry.Field.EndsWith(".condemned", StringComparison.Ordinal) && before[entry.Field] == "true" && entry.Typed != "true" && !entry.Role.May(Right.TakeBackStop))
        {
            return new Problem(entry.Field, "may-not-release", "Only an instructor or the owner may take 'condemned' back.");
        }

        return null;
    }

    private static bool StandsUnder(string field, string path) => field.StartsWith(path, StringComparison.Ordinal) && (field.Length == path.Length || field[path.Length] == '.');

    /// <summary>A vehicle is not handed back while two values stand against each other.</summary>
    internal static Problem Clashing(Clash clash) => new(HandBackField, "two-values",
        $"Two people entered different values in {clash.Field}: {string.Join(" and ", clash.Entries.Take(2).Select(e => $"'{NumberText.Shown(e.Typed)}' by {e.By}"))}. Somebody chooses first.");

    /// <summary>A vehicle is handed back by somebody who may, with nothing unread and nothing that stops it.</summary>
    private static Problem? HandBack(Entry entry, Func<List<Problem>, VisitState> stands)
    {
        if (!entry.Role.May(Right.HandBack))
        {
            return new Problem(entry.Field, "may-not-release", $"A {entry.Role.Word()} may not hand a vehicle back; a technician, an instructor or the owner does.");
        }

        var problems = new List<Problem>();
        var state = stands(problems);
        if (problems.Count > 0)
        {
            return new Problem(entry.Field, "unread", $"Before hand-back, put right what could not be read at {problems[0].Where}: {problems[0].Message}");
        }

        return state.MayLeave
            ? null
            : new Problem(entry.Field, "hand-back-stopped", string.Create(CultureInfo.InvariantCulture, $"{Sentence(state.Stops[0])}{(state.Stops.Count == 1 ? "" : $" There are {state.Stops.Count - 1} more.")}"));
    }

    private static string Sentence(Stop stop) =>
        $"Hand-back is stopped at '{stop.Leg.Title()}'{(stop.Position is null ? "" : $", {stop.Position}")}: {stop.What}; {stop.Why}.";

    private static bool HasHalfCharacter(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                i++;
            }
            else if (char.IsSurrogate(text[i]))
            {
                return true;
            }
        }

        return false;
    }
}
