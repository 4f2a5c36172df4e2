using System.Globalization;
using PdfSharp.Drawing;
using Trundle.Engine.Findings;
using Trundle.Sheets.Drawing;
using Trundle.Sheets.Pictures;

namespace Trundle.Sheets;

/// <summary>The customer's sheet: one page. What we found, what we did, what to watch, when next, who signed.</summary>
internal static class CustomerSheet
{
    /// <summary>The room for a signature under the work that was declined.</summary>
    private const double SignHeight = 24;

    /// <summary>The most characters of one work that was declined on a page that is too full.</summary>
    private const int LongestDeclined = 220;

    private static readonly double[] Sizes = [9.5, 9, 8.5, 8, 7.5, 7];

    /// <summary>What we found may take so much of the width, where that lets a greater type fit: seldom is as much found as done.</summary>
    private static readonly double[] Shares = [0.5, 0.42, 0.58, 0.66];

    public static (byte[] Pdf, int Pages) Write(SheetContent content, PaperSize paper)
    {
        var roomy = Write(content, paper, tight: false);
        var (pdf, pages, _) = roomy.Whole ? roomy : Write(content, paper, tight: true);
        return (pdf, pages);
    }

    /// <summary>Writes it; a tight page draws the vehicle smaller and says less of what stops it, to leave room for the words. Whole where nothing had to be left out.</summary>
    private static (byte[] Pdf, int Pages, bool Whole) Write(SheetContent content, PaperSize paper, bool tight)
    {
        var whole = true;
        using var document = new SheetDocument(paper, $"{content.Name}, {content.Date}", content.State.Arrived.Date, content.Texts);
        var (g, inner) = document.Add();
        using (g)
        {
            var foot = Foot(g, inner, content);
            var top = Head(g, inner, content, tight ? 2 : 4);
            top = Plan(g, inner, content, top, tight);
            whole = Body(g, new XRect(inner.X, top, inner.Width, foot - top - 6), content);
        }

        var (pdf, pages) = document.Finish();
        return (pdf, pages, whole);
    }

    private static double Head(XGraphics g, XRect inner, SheetContent content, int mostStops)
    {
        var y = inner.Y + 16;
        var right = $"{content.Workshop ?? ""}{(content.Workshop is null ? "" : " · ")}{content.Date}";
        SheetText.Draw(g, right, inner.Right, y, 9, SheetInk.Soft, align: Align.Right);
        var room = inner.Width - SheetText.Width(g, right, 9) - 14;
        var size = 18.0;
        while (size > 10 && SheetText.Width(g, content.Name, size, true) > room)
        {
            size -= 0.5;
        }

        SheetText.DrawLine(g, SheetText.Wrap(g, content.Name, size, room, true)[0], inner.X, y, size, SheetInk.Ink, true);
        y += 6;
        if (content.Vehicle.Complaint is { } complaint)
        {
            y += SheetText.Paragraph(g, $"You told us: {complaint}", inner.X, y, inner.Width, 9.5, SheetInk.Soft);
        }

        if (content.State.HandedBack)
        {
            return y + 6;
        }

        return Stopped(g, inner, content, y + 4, mostStops);
    }

    /// <summary>A vehicle that may not leave, or that nobody handed back, says so before anything else.</summary>
    private static double Stopped(XGraphics g, XRect inner, SheetContent content, double top, int most)
    {
        var state = content.State;
        var lines = new List<string>();
        if (state.NotTightened.Count > 0)
        {
            lines.Add($"Wheels not finally tightened: {string.Join(", ", state.NotTightened)}. Do not drive.");
        }

        var stops = state.Stops.GroupBy(s => (What: content.WhatStops(s), s.Why))
            .Select(alike => $"{(alike.Count() == 1 ? SheetContent.Capital(content.Placed(alike.First().Position, alike.Key.What)) : $"{content.Places(alike.Select(s => s.Position))}: {alike.Key.What}")}{(alike.Key.What.EndsWith('?') ? "" : ".")} {SheetContent.Capital(alike.Key.Why.TrimEnd('.'))}.")
            .ToList();
        lines.AddRange(stops.Take(most));
        if (stops.Count > most)
        {
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"… and {stops.Count - most} more."));
        }

        const double size = 8.5;
        var width = inner.Width - 44;
        var height = 20 + lines.Sum(l => SheetText.ParagraphHeight(g, l, width, size)) + 4;
        g.DrawRectangle(SheetInk.Line(SheetInk.Major, 1.2), inner.X, top, inner.Width, height);
        SquarePicture.Draw(g, inner.X + 8, top + 6, 18, Category.Dangerous);
        SheetText.Draw(g, state.MayLeave ? "Not handed back yet: nobody has signed." : "Not handed back: this still stops it.", inner.X + 34, top + 15, 10, SheetInk.Ink, true);
        var y = top + 20;
        foreach (var line in lines)
        {
            y += SheetText.Paragraph(g, line, inner.X + 34, y, width, size, SheetInk.Ink);
        }

        return top + height + 6;
    }

    private static double Plan(XGraphics g, XRect inner, SheetContent content, double top, bool tight)
    {
        var wheels = content.Wheels.Select(w => new PlanWheel(w.Position, w.Name,
            [.. new[]
            {
                w.Leaving?.Tyre?.Marking?.Typed,
                w.Leaving?.Pressure is { } p ? content.Units.Pressure(p.Value) : null,
            }.OfType<string>()], w.Leaving?.Tread, w.Leaving is null && w.WorstLeaving == Category.None ? null : w.WorstLeaving)).ToList();
        if (wheels.Count == 0)
        {
            return top;
        }

        var singleTrack = content.Vehicle.SingleTrack;
        var height = PlanPicture.Height(wheels, singleTrack, tight);
        g.DrawLine(SheetInk.Line(SheetInk.Hairline, 0.6), inner.X, top, inner.Right, top);
        PlanPicture.Draw(g, new XRect(inner.X, top + 10, inner.Width, height), wheels, content.Vehicle.Axles.Count, Depths(content), singleTrack);
        var limit = content.DepthLimit is null ? "" : " The dashed line is the least depth that the rules allow.";
        SheetText.Draw(g, $"As it leaves, seen from above.{(singleTrack ? " The front is at the left." : "")} Least tread depth at inner, centre and outer, in {(content.Units.Habits.Depth == "mm" ? "mm" : "1/32 in")}.{limit}", inner.X, top + height + 18, 7, SheetInk.Soft);
        g.DrawLine(SheetInk.Line(SheetInk.Hairline, 0.6), inner.X, top + height + 24, inner.Right, top + height + 24);
        return top + height + 30;
    }

    private static DepthScale Depths(SheetContent content) => new(content.Units.Habits.Depth, content.DepthLimit);

    /// <summary>Two columns, what we found and what we did; under them, across, what to watch and when next. The greatest type that fits is taken; false where even the smallest left something out.</summary>
    private static bool Body(XGraphics g, XRect box, SheetContent content)
    {
        var found = FindingLine.Of(content, content.Found.Where(f => f.Category > Category.None)).ToList();
        if (found.Count == 0)
        {
            found.Add(new FindingLine(null, [content.Found.Count == 0 ? "Nothing was looked at." : "Nothing that needs doing."], ""));
        }

        var did = content.Did.Count == 0 ? ["Nothing was done."] : content.Did;
        var everyDeclined = content.State.Work.Paper.Declined.Select(SheetPaper.Declined).ToList();
        var declined = everyDeclined;
        var came = content.Came;
        var unsigned = content.State.Work.Paper.Declined.Any(d => d.Signed is null);
        var (column, beside) = (0.0, 0.0);
        var size = Sizes[^1];
        var (foundCount, didCount) = (found.Count, did.Count);
        foreach (var candidate in Sizes)
        {
            size = candidate;
            var best = double.PositiveInfinity;
            foreach (var share in Shares)
            {
                var before = (column, beside);
                (column, beside) = ((box.Width - 18) * share, (box.Width - 18) * (1 - share));
                var needed = Needed();
                if (needed >= best)
                {
                    (column, beside) = before;
                    continue;
                }

                best = needed;
                if (best <= box.Height)
                {
                    break;
                }
            }

            if (best <= box.Height)
            {
                break;
            }
        }

        var whole = Needed() <= box.Height;
        var all = found;
        foreach (var facts in (int[])[6, 4, 2, 1])
        {
            if (Needed() <= box.Height)
            {
                break;
            }

            found = [.. all.Select(l => l.Short(facts))];
        }

        if (Needed() > box.Height)
        {
            came = content.CameShort;
        }

        // On a page that is too full even in the smallest type, the least grave lines go to the workshop's file, and the page says how many.
        while (Needed() > box.Height && (foundCount > 1 || didCount > 1))
        {
            if (foundCount > 1 && (didCount <= 1 || FoundHeight() >= DidHeight()))
            {
                foundCount--;
            }
            else
            {
                didCount--;
            }
        }

        // What was declined is signed for, so it is shortened last: its words first, then the last of them.
        if (Needed() > box.Height)
        {
            declined = [.. everyDeclined.Select(d => SheetPaper.Cut(d, LongestDeclined))];
        }

        for (var shown = declined.Count - 1; Needed() > box.Height && shown >= 1; shown--)
        {
            declined = [.. everyDeclined.Take(shown).Select(d => SheetPaper.Cut(d, LongestDeclined)), string.Create(CultureInfo.InvariantCulture, $"… and {everyDeclined.Count - shown} more, each with its risk, in the workshop's file.")];
        }

        var y = box.Y;
        SheetText.Draw(g, "What we found", box.X, y + size + 2, size + 2, SheetInk.Ink, true);
        SheetText.Draw(g, "What we did", box.X + column + 18, y + size + 2, size + 2, SheetInk.Ink, true);
        var left = y + Heading();
        foreach (var line in found.Take(foundCount))
        {
            left += line.Draw(g, box.X, left, column, size);
        }

        More(found.Count - foundCount, box.X, ref left);
        var right = y + Heading();
        foreach (var line in did.Take(didCount))
        {
            right += SheetText.Paragraph(g, line, box.X + column + 18, right, beside, size, SheetInk.Ink) + Gap();
        }

        More(did.Count - didCount, box.X + column + 18, ref right);
        g.DrawLine(SheetInk.Line(SheetInk.Hairline, 0.6), box.X + column + 9, y, box.X + column + 9, Math.Max(left, right));
        y = Math.Max(left, right) + 4;
        y = came.Count == 0 ? y : Across("When it came, before any work", came, y);
        y = declined.Count == 0 ? y : Declined(y);
        y = Across("What you should watch", content.Watch, y);
        Across("Next", content.Next, y);
        return whole;

        double Heading() => SheetText.Line(size + 2) + 3;
        double Gap() => size * 0.35;
        double FoundHeight() => found.Take(foundCount).Sum(l => l.Height(g, column, size)) + (foundCount < found.Count ? SheetText.Line(size) : 0);
        double DidHeight() => did.Take(didCount).Sum(l => SheetText.ParagraphHeight(g, l, beside, size) + Gap()) + (didCount < did.Count ? SheetText.Line(size) : 0);
        double AcrossHeight(IReadOnlyList<string> lines) => Heading() + 5 + lines.Sum(l => SheetText.ParagraphHeight(g, l, box.Width - 10, size) + (Gap() / 2));
        double Needed() => Heading() + Math.Max(FoundHeight(), DidHeight()) + 4 + AcrossHeight(content.Watch) + AcrossHeight(content.Next)
            + (came.Count == 0 ? 0 : AcrossHeight(came)) + (declined.Count == 0 ? 0 : AcrossHeight(declined) + (unsigned ? SignHeight : 0));

        double Declined(double from)
        {
            var under = Across("Work you declined", declined, from);
            if (!unsigned)
            {
                return under;
            }

            // The line for the customer's own hand: what was declined, with its risk, stands above it.
            var line = under + SignHeight - 8;
            SheetText.Draw(g, "I was told the risk and declined this work. Signature:", box.X + 10, line, size - 0.5, SheetInk.Soft);
            var start = box.X + 16 + SheetText.Width(g, "I was told the risk and declined this work. Signature:", size - 0.5);
            g.DrawLine(SheetInk.Line(SheetInk.Ink, 0.6), start, line + 2, box.Right - 130, line + 2);
            SheetText.Draw(g, "Date, time:", box.Right - 124, line, size - 0.5, SheetInk.Soft);
            g.DrawLine(SheetInk.Line(SheetInk.Ink, 0.6), box.Right - 78, line + 2, box.Right, line + 2);
            return under + SignHeight;
        }

        double Across(string title, IReadOnlyList<string> lines, double from)
        {
            g.DrawLine(SheetInk.Line(SheetInk.Hairline, 0.6), box.X, from, box.Right, from);
            SheetText.Draw(g, title, box.X, from + size + 5, size + 2, SheetInk.Ink, true);
            var at = from + Heading() + 3;
            foreach (var line in lines)
            {
                g.DrawRectangle(SheetInk.Fill(SheetInk.Accent), box.X + 1, at + (size * 0.5), 2.6, 2.6);
                at += SheetText.Paragraph(g, line, box.X + 10, at, box.Width - 10, size, SheetInk.Ink) + (Gap() / 2);
            }

            return at + 2;
        }

        void More(int count, double x, ref double at)
        {
            if (count > 0)
            {
                SheetText.Draw(g, string.Create(CultureInfo.InvariantCulture, $"… and {count} more in the workshop's file."), x, at + size, size, SheetInk.Soft);
                at += SheetText.Line(size);
            }
        }
    }

    /// <summary>The title block with places to sign; returns its top.</summary>
    private static double Foot(XGraphics g, XRect inner, SheetContent content)
    {
        var state = content.State;
        var left = inner.X - SheetDocument.Inside;
        var width = inner.Width + (2 * SheetDocument.Inside);
        var top = inner.Bottom + SheetDocument.Inside - (3 * TitleBlock.RowHeight);
        var signed = state.HandedBack
            ? $"{state.Work.HandedBackBy}{(state.Work.HandedBackRole is { } role ? $", {RoleWord(role)}" : "")}"
            : "nobody yet";
        TitleBlock.Draw(g, left, top, width,
        [
            [("vehicle", content.Name, 3), ("odometer", content.Vehicle.Odometer is { } o ? content.Units.Road(o) : "–", 1.6), ("visit", content.State.Work.Number ?? "–", 1.2)],
            [("tyres on placard", content.Placard, 3), ("date", content.Date, 1.6), ("bay", content.State.Work.Bay ?? "–", 1.2)],
            [("handed back by", signed, 1.6), ("signature", "", 2.1), ("customer", "", 2.1)],
        ]);
        return top;
    }

    private static string RoleWord(Visits.Bay.Role role) => Visits.Bay.RoleWords.Word(role);
}
