using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Condition;

/// <summary>The age of a tyre on the date: by law where there is one, else by the guidance of those who give it.</summary>
internal static class AgeCheck
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        if (assembly.Tyre is not { } tyre)
        {
            return;
        }

        var at = assembly.Position.ToString();
        if (tyre.Tin is not { } typed)
        {
            Missing(book, assembly, at, "none entered");
            return;
        }

        var read = TinReader.Read(typed, book.Subject.Date);
        if (!read.IsRead)
        {
            book.Judge("age.code", at, true, Amount.Word(typed), null, $"{read.Problem!.Message} {book.Rule("age.code").Action}");
            return;
        }

        if (read.Value.Week is null)
        {
            Missing(book, assembly, at, "no date in the code");
        }
        else if (book.Subject.Date is not { } day)
        {
            book.Need(null, "today's date", "the tyres' age is told from it");
        }
        else if (read.Value.AgeOn(day) is { } age)
        {
            Judge(book, assembly.Position, at, read.Value, age);
        }
    }

    private static void Missing(CheckBook book, Assembly assembly, string at, string what)
    {
        if (!assembly.Position.IsSpare && book.InForce.LawOf("age.legible", book.Subject) is not null)
        {
            book.Judge("age.legible", at, true, Amount.Word(what), null);
        }
        else
        {
            book.Need(at, "the TIN with its date code", "the tyre's age is told from it");
        }
    }

    private static void Judge(CheckBook book, Position position, string at, Tin tin, TinAge age)
    {
        var measured = age.Years is { } years
            ? new Amount(years, "years", string.Create(CultureInfo.InvariantCulture, $"{Written(years)} (week {tin.Week} of {tin.Year}, give or take a week)"))
            : new Amount(age.LeastYears, "years", string.Create(CultureInfo.InvariantCulture, $"{age.LeastYears:0} to {age.MostYears:0} years (three-digit date code: decade not known)"));
        string[] cautions = tin.Form == TinForm.Retread ? ["The date of a retread is that of its retreading."] : [];
        var law = book.LawLimit("age.law", position);
        if (law is not null)
        {
            // The week's first day is counted, so only an age that is over the limit by more than the week's doubt breaks it for certain.
            book.Judge("age.law", at, law.IsBrokenBy(age.LeastYears), age.Years is not { } told || Math.Abs(told - law.Compared) >= 0.05 ? measured : new Amount(age.LeastYears, "years", string.Create(CultureInfo.InvariantCulture, $"at least {Written(age.LeastYears)} (week {tin.Week} of {tin.Year})")), law.Limit, null, cautions);
        }

        book.ByWorkshop(JudgedQuantity.TyreAge, position, at, age.Years ?? age.LeastYears, measured);
        if (law?.IsBrokenBy(age.LeastYears) == true)
        {
            // Where the law takes the tyre off, advice to replace it says nothing more.
            return;
        }

        if (tin.AmbiguousDecade)
        {
            book.Judge("age.unknown-decade", at, true, measured, null);
            return;
        }

        string[] steps = ["age.ten", "age.six", "age.inspect"];
        var rule = Array.Find(steps, r => book.Limit(r, position).IsBrokenBy(age.Years!.Value));
        var limit = book.Limit(rule ?? "age.inspect", position);
        book.Judge(limit.Rule, at, rule is not null, measured, limit.Limit, rule is null ? null : book.Rule(rule).Action, cautions);
    }

    /// <summary>In years to a tenth; near a whole year, as limits are, in years and days, so that it reads under or over: 9 years 358 days, 10 years 1 day.</summary>
    private static string Written(double years)
    {
        if (Math.Abs(years - Math.Round(years)) >= 0.05)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{years:0.0} years");
        }

        var whole = Math.Floor(years + 1e-9);
        var days = (int)Math.Floor(((years - whole) * 365.25) + 1e-6);
        return string.Create(CultureInfo.InvariantCulture, $"{whole:0} years{(days > 0 ? $" {days} day{(days == 1 ? "" : "s")}" : "")}");
    }
}
