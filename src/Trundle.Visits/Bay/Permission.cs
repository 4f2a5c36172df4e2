using System.Globalization;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>
/// That an instructor let one trainee do one hazardous act on this visit, given before it is done: the machine-safety drill is passed and protection is
/// worn. It holds for that trainee, that act and that visit only. Source: 29 CFR 1910.177(c), each worker's ability is evaluated; common practice.
/// </summary>
/// <param name="Act">What the trainee may do.</param>
/// <param name="For">The trainee's name, as it stands beside the trainee's entries.</param>
/// <param name="By">Who gave it, or null where the file does not say.</param>
/// <param name="Role">What that person was, or null.</param>
/// <param name="At">When, in UTC; null where the file does not say.</param>
public sealed record Permission(HazardousAct Act, string For, string? By, Role? Role, DateTimeOffset? At)
{
    /// <summary>The path of the list.</summary>
    public const string List = "work.permissions";

    /// <summary>The day on which the trainee passed the machine-safety drill, or null.</summary>
    public DateOnly? Drill { get; init; }

    /// <summary>True where eyes, hands, feet and clothing were looked at.</summary>
    public bool Protected { get; init; }

    /// <summary>What it lacks, in words; null where it is whole.</summary>
    public string? Lacks => By is null || Role?.May(Right.PermitTrainee) != true ? "no instructor gave it"
        : Drill is null ? "no passed machine-safety drill is named"
        : At is { } at && Drill > DateOnly.FromDateTime(at.UtcDateTime.AddDays(1)) ? "its machine-safety drill lies in the future"
        : !Protected ? "protection was not confirmed"
        : null;

    internal static Permission? Read(FileObject o)
    {
        var act = o.Require("act", "say for what: lift, demount or inflate") ? o.Word("act", [.. HazardousActWords.All.Select(a => (a.Key(), a))]) : null;
        var name = o.Require("for", "name the trainee") ? o.Text("for") : null;
        var permission = new Permission(act ?? default, name ?? "", o.Text("by"), o.Word("role", VisitWorkReader.RoleChoices), Moments.Read(o, "at"))
        {
            Drill = o.Date("drill"),
            Protected = o.Flag("protection") ?? false,
        };
        o.Done();
        return act is null || name is null ? null : permission;
    }
}

/// <summary>That a trainee recorded a step.</summary>
/// <param name="By">The trainee's name.</param>
/// <param name="At">When, in UTC; null where the file does not say.</param>
public sealed record TraineeStep(string By, DateTimeOffset? At)
{
    /// <summary>The path under which a visit's file tells it. Nobody types it: it is who entered the step.</summary>
    public const string Root = "work.trainees";

    internal static TraineeStep? Read(FileObject o)
    {
        var by = o.Require("by", "name the trainee") ? o.Text("by") : null;
        var at = Moments.Read(o, "at");
        o.Done();
        return by is null ? null : new TraineeStep(by, at);
    }
}

/// <summary>What an instructor said of a trainee's work at a step, having looked at it.</summary>
/// <param name="Satisfactory">True where it may stand, false where it is done again.</param>
/// <param name="By">Who looked, or null where the file does not say.</param>
/// <param name="Role">What that person was, or null.</param>
/// <param name="Note">What to do differently, or null.</param>
/// <param name="At">When, in UTC; null where the file does not say.</param>
public sealed record SignedOff(bool Satisfactory, string? By, Role? Role, string? Note, DateTimeOffset? At)
{
    /// <summary>The path of all.</summary>
    public const string Root = "work.signedOff";

    /// <summary>The words of the result.</summary>
    public static IReadOnlyList<string> Results { get; } = ["satisfactory", "not yet"];

    /// <summary>The path at a step.</summary>
    public static string FieldAt(string positionOrVehicle, string step) => $"{Root}.{positionOrVehicle}.{step}";

    /// <summary>True where somebody said it who may.</summary>
    public bool Counts => By is not null && Role?.May(Right.PermitTrainee) == true;

    internal static SignedOff? Read(FileObject o)
    {
        var result = o.Require("result", "say satisfactory or not yet") ? o.Word("result", (Results[0], true), (Results[1], false)) : null;
        var signed = new SignedOff(result ?? false, o.Text("by"), o.Word("role", VisitWorkReader.RoleChoices), o.Text("note"), Moments.Read(o, "at"));
        o.Done();
        return result is null ? null : signed;
    }
}

/// <summary>An incident, or what nearly was one.</summary>
/// <param name="Hurt">True where somebody was hurt or something broke; false for a near miss.</param>
/// <param name="Where">On which leg and at which wheel, in words, or null.</param>
/// <param name="Words">What happened, or null where nobody has said it yet.</param>
/// <param name="By">Who recorded it, or null.</param>
/// <param name="At">When, in UTC; null where the file does not say.</param>
public sealed record Incident(bool Hurt, string? Where, string? Words, string? By, DateTimeOffset? At)
{
    /// <summary>What the person was who recorded it, or null.</summary>
    public Role? Role { get; init; }

    /// <summary>The path of the list.</summary>
    public const string List = "work.incidents";

    /// <summary>The words of the kinds.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["near miss", "incident"];

    /// <summary>The word of its kind.</summary>
    public string Kind => Kinds[Hurt ? 1 : 0];

    internal static Incident? Read(FileObject o)
    {
        var hurt = o.Require("kind", "say near miss or incident") ? o.Word("kind", (Kinds[0], false), (Kinds[1], true)) : null;
        var incident = new Incident(hurt ?? false, o.Text("where"), o.Text("words"), o.Text("by"), Moments.Read(o, "at")) { Role = o.Word("role", VisitWorkReader.RoleChoices) };
        o.Done();
        return hurt is null ? null : incident;
    }
}

/// <summary>Moments in a visit's file: 2026-03-14 16:30:05 UTC.</summary>
internal static class Moments
{
    private const string Form = "yyyy-MM-dd HH:mm:ss 'UTC'";

    public static string Text(DateTimeOffset at) => at.UtcDateTime.ToString(Form, CultureInfo.InvariantCulture);

    public static DateTimeOffset? Read(FileObject o, string key)
    {
        if (o.Text(key) is not { } text)
        {
            return null;
        }

        if (DateTimeOffset.TryParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at))
        {
            return at;
        }

        o.Wrong(key, "moment-unreadable", $"'{NumberText.Shown(text)}' is no moment; write the day and the time in UTC, such as 2026-03-14 16:30:05 UTC.");
        return null;
    }
}
