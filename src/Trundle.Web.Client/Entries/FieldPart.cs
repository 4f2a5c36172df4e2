using Microsoft.AspNetCore.Components;
using Trundle.Web.Client.Glass;

namespace Trundle.Web.Client.Entries;

/// <summary>What every field on a page shares: its path, what stands in it, its problem, and the names that tie them together for a screen reader.</summary>
public abstract class FieldPart : Spoken
{
    /// <summary>What stands behind the page.</summary>
    [CascadingParameter]
    public required IFields Entered { get; set; }

    /// <summary>The field's path.</summary>
    [Parameter, EditorRequired]
    public required string Field { get; set; }

    /// <summary>What it is called.</summary>
    [Parameter, EditorRequired]
    public required string Label { get; set; }

    /// <summary>What helps, in a few words.</summary>
    [Parameter]
    public string? Hint { get; set; }

    /// <summary>What else is entered with it; told what stands in it then.</summary>
    [Parameter]
    public Func<string, IEnumerable<(string Field, string Typed)>>? Besides { get; set; }

    /// <summary>As recorded, or null.</summary>
    protected string? Typed => Entered[Field];

    /// <summary>What is wrong with it, in words.</summary>
    protected string? Wrong => Entered.ProblemOf(Field);

    /// <summary>The control's name in the page.</summary>
    protected string ControlId => IdOf(Field);

    /// <summary>The names of what describes it.</summary>
    protected string? DescribedBy
    {
        get
        {
            var names = string.Join(' ', new[] { Hint is null ? null : $"{ControlId}-hint", Wrong is null ? null : $"{ControlId}-problem" }.OfType<string>());
            return names.Length == 0 ? null : names;
        }
    }

    /// <summary>Enters a text, and what goes with it.</summary>
    protected Task RecordAsync(string typed) => Entered.EnterAsync([(Field, typed), .. Besides?.Invoke(typed) ?? []]);

    /// <summary>The name in the page of a field's control.</summary>
    public static string IdOf(string field) => $"f-{field.Replace('.', '-').Replace('@', '-')}";
}
