using Microsoft.AspNetCore.Http;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Paper;

namespace Trundle.Web.Office.Stock;

/// <summary>The form by which a thing is put on the list, with what was typed.</summary>
public sealed record StockForm
{
    /// <summary>The word of the kind.</summary>
    public string Kind { get; init; } = StockName.All[0].Word;

    /// <summary>Its name.</summary>
    public string Name { get; init; } = "";

    /// <summary>The mass of one weight.</summary>
    public string Mass { get; init; } = "";

    /// <summary>What one of it is.</summary>
    public string Unit { get; init; } = "piece";

    /// <summary>How many there are.</summary>
    public string OnHand { get; init; } = "";

    /// <summary>At how many it is ordered.</summary>
    public string Level { get; init; } = "";

    /// <summary>The line whose form was wrong, or null where it is this form.</summary>
    public Guid? Line { get; init; }

    /// <summary>What is wrong, or null.</summary>
    public Problem? Problem { get; init; }

    /// <summary>The form as it was sent.</summary>
    internal static StockForm Sent(IFormCollection sent) => new()
    {
        Kind = sent["kind"].ToString(), Name = sent["name"].ToString().Trim(), Mass = sent["mass"].ToString().Trim(), Unit = sent["unit"].ToString().Trim(),
        OnHand = sent["onHand"].ToString().Trim(), Level = sent["level"].ToString().Trim(),
    };

    /// <summary>What is wrong with a field, or null.</summary>
    public string? Wrong(string field) => Line is null && Problem?.Where == field ? Problem.Message : null;

    /// <summary>What was typed, as read.</summary>
    public Reading<NewStockItem> Item()
    {
        if (StockName.KindOf(Kind) is not { } kind)
        {
            return Reading<NewStockItem>.Failed(new Problem("kind", "word-unknown", "Choose what it is."));
        }

        if (Name.Length > 80 || Unit.Length > 20)
        {
            return Reading<NewStockItem>.Failed(new Problem(Name.Length > 80 ? "name" : "unit", "too-long", "That is longer than a line of the list; write it shorter."));
        }

        Mass? mass = null;
        if (kind.IsWeight() && Mass.Length > 0)
        {
            var read = Quantity.Read<Mass>(Mass, "g");
            if (!read.IsRead || read.Value.Grams is <= 0 or > 2000)
            {
                return Reading<NewStockItem>.Failed(new Problem("mass", "mass-unreadable", read.Problem?.Message ?? $"'{NumberText.Shown(Mass)}' is no weight of a wheel."));
            }

            mass = read.Value;
        }

        return StockEndpoints.Whole("onHand", OnHand).Then(count => Level.Length == 0
            ? Reading<NewStockItem>.Of(Made(count, null))
            : StockEndpoints.Whole("level", Level).Then(level => Reading<NewStockItem>.Of(Made(count, level))));

        NewStockItem Made(int count, int? level) => new(kind, Name.Length == 0 ? null : Name, mass, Unit.Length == 0 ? "piece" : Unit, count, level);
    }
}
