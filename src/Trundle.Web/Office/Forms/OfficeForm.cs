using Microsoft.AspNetCore.Http;
using Trundle.Measures;

namespace Trundle.Web.Office.Forms;

/// <summary>One field of a form.</summary>
/// <param name="Name">Its place in the record, such as <c>points[0].reference</c>.</param>
/// <param name="Label">What it is called.</param>
/// <param name="Hint">What helps.</param>
public sealed record FormField(string Name, string Label, string Hint = "")
{
    /// <summary>The unit beside it, in which a bare number is taken; or null.</summary>
    public string? Unit { get; init; }

    /// <summary>Recorded as typed: the unit beside it is the only one it is ever told in.</summary>
    public bool Plain { get; init; }

    /// <summary>The part of the form that it belongs to, or empty.</summary>
    public string Group { get; init; } = "";

    /// <summary>The row of its group's table, or null where it stands by itself.</summary>
    public string? Row { get; init; }

    /// <summary>A day.</summary>
    public bool IsDay { get; init; }

    /// <summary>Several lines.</summary>
    public int Lines { get; init; } = 1;

    /// <summary>Word and text, where it is one of a few.</summary>
    public IReadOnlyList<(string Word, string Text)> Choices { get; init; } = [];
}

/// <summary>A form with what stands in it.</summary>
/// <param name="Key">Which form of a page: its field <c>form</c> says so.</param>
/// <param name="Fields">Its fields.</param>
/// <param name="Typed">What stands in each.</param>
/// <param name="Problem">What is wrong, or null.</param>
public record OfficeForm(string Key, IReadOnlyList<FormField> Fields, IReadOnlyDictionary<string, string> Typed, Problem? Problem)
{
    /// <summary>What stands in a field.</summary>
    public string this[string name] => Typed.GetValueOrDefault(name, "");

    /// <summary>What is wrong with a field, or null.</summary>
    public string? Wrong(FormField field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return Problem is { } p && p.Where == field.Name ? p.Message : null;
    }

    /// <summary>What is wrong with the form as a whole, or null.</summary>
    public string? WrongItself => Problem is { } p && Fields.All(f => Wrong(f) is null) ? p.Message : null;

    /// <summary>A field as it is recorded: as typed; a bare number gets the unit that stood beside it.</summary>
    public string Recorded(FormField field)
    {
        ArgumentNullException.ThrowIfNull(field);
        var typed = this[field.Name];
        return field is { Unit: { } unit, Plain: false } && NumberText.Read(typed).IsRead ? $"{typed} {(typed.Contains('/', StringComparison.Ordinal) ? "in" : unit)}" : typed;
    }
}

/// <summary>Forms as they are sent.</summary>
public static class SentForms
{
    /// <summary>The form with what was sent.</summary>
    public static T Sent<T>(this T form, IFormCollection sent) where T : OfficeForm
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(sent);
        return (T)((OfficeForm)form with { Typed = form.Fields.ToDictionary(f => f.Name, f => sent[f.Name].ToString().Trim(), StringComparer.Ordinal) });
    }

    /// <summary>The identifier that was made with the form, so that it is taken once.</summary>
    public static Guid Identifier(this IFormCollection sent)
    {
        ArgumentNullException.ThrowIfNull(sent);
        return Guid.TryParseExact(sent["id"], "D", out var id) && id != Guid.Empty ? id : Guid.CreateVersion7();
    }
}
