using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Trundle.Words;

namespace Trundle.Rules.Tests.Texts;

/// <summary>
/// Every text that the program can show, read from its sources as forms: the strings of the code, with a hole for what is put in; what the pages say,
/// from the C# that the build makes of them; and the data. A key or a style's name that looks like a word is among them too: that does no harm.
/// </summary>
internal static partial class TextsOfSource
{
    private static readonly string[] Rooms = ["Trundle.Measures", "Trundle.Engine", "Trundle.Visits", "Trundle.Sheets", "Trundle.Store", "Trundle.Web.Client", "Trundle.Web"];

    public static IReadOnlyList<string> All()
    {
        var found = new HashSet<string>(StringComparer.Ordinal);
        foreach (var file in Rooms.SelectMany(r => House.Files($"src/{r}", "*.cs")).Where(f => !f.Contains("Migrations", StringComparison.Ordinal)))
        {
            OfCode(File.ReadAllText(file), found);
        }

        var pages = MadePages().ToList();
        pages.Count.ShouldBe(Rooms.Sum(r => House.Files($"src/{r}", "*.razor").Count()), "Each page has its C# beside the build; build anew where one is missing.");
        pages.ForEach(p => OfCode(File.ReadAllText(p), found));
        foreach (var data in Rooms.SelectMany(r => House.Files($"src/{r}", "*.csv")))
        {
            foreach (var cell in Cells(File.ReadAllText(data)))
            {
                Add(cell, found);
            }
        }

        // A branch is named by its file.
        foreach (var branch in House.Files("src/Trundle.Engine", "*.figures.csv").Select(f => Path.GetFileName(f).Split('.')[0]))
        {
            Add(branch, found);
        }

        foreach (var procedure in House.Files("src/Trundle.Visits/Procedures", "*.json"))
        {
            using var json = JsonDocument.Parse(File.ReadAllText(procedure));
            OfJson(json.RootElement, found);
        }

        return [.. found.Order(StringComparer.Ordinal)];
    }

    /// <summary>The forms of one piece of C#.</summary>
    public static void OfCode(string code, HashSet<string> found)
    {
        foreach (var node in CSharpSyntaxTree.ParseText(code).GetRoot().DescendantNodes(n => n is not AttributeListSyntax and not UsingDirectiveSyntax))
        {
            if (node is not ExpressionSyntax text || !IsWhole(text) || IsKey(text))
            {
                continue;
            }

            var pieces = new StringBuilder();
            var holes = 0;
            if (!Read(text, pieces, ref holes))
            {
                continue;
            }

            var form = pieces.ToString();
            if (form.Contains('<', StringComparison.Ordinal) && Tag().IsMatch(form))
            {
                Markup.Change(form, t => { Add(Renumbered(t), found); return t; }, Words.Texts.Source);
            }
            else
            {
                Add(form, found);
            }
        }
    }

    /// <summary>The pages as the build wrote them, without those of pages that are gone.</summary>
    private static IEnumerable<string> MadePages()
    {
        foreach (var room in Rooms)
        {
            foreach (var page in House.Files($"src/{room}", "*.razor"))
            {
                var within = Path.GetRelativePath(Path.Combine(House.Root, "src", room), page);
                var made = Path.Combine(House.Root, "artifacts", "obj", room, "release", "generated", "Microsoft.CodeAnalysis.Razor.Compiler", "Microsoft.NET.Sdk.Razor.SourceGenerators.RazorSourceGenerator", within[..^".razor".Length] + "_razor.g.cs");
                if (File.Exists(made))
                {
                    yield return made;
                }
            }
        }
    }

    /// <summary>True for a text that is no part of a longer one.</summary>
    private static bool IsWhole(ExpressionSyntax text) => text switch
    {
        LiteralExpressionSyntax l when l.IsKind(SyntaxKind.StringLiteralExpression) => !IsSum(Outside(text)),
        InterpolatedStringExpressionSyntax => !IsSum(Outside(text)),
        BinaryExpressionSyntax sum => IsSum(sum) && !IsSum(Outside(sum)),
        _ => false,
    };

    private static SyntaxNode? Outside(ExpressionSyntax text) => text.Parent is ParenthesizedExpressionSyntax p ? Outside(p) : text.Parent;

    private static bool IsSum(SyntaxNode? node) =>
        node is BinaryExpressionSyntax sum && sum.IsKind(SyntaxKind.AddExpression) && sum.DescendantNodes(n => n is BinaryExpressionSyntax or ParenthesizedExpressionSyntax).Any(n => n is InterpolatedStringExpressionSyntax || n.IsKind(SyntaxKind.StringLiteralExpression));

    /// <summary>True for what is no text by where it stands: a key that is asked for, a case, the name or the value of an attribute that nobody reads.</summary>
    private static bool IsKey(ExpressionSyntax text)
    {
        if (text.Parent is ConstantPatternSyntax or CaseSwitchLabelSyntax)
        {
            return true;
        }

        if (text.Parent is ArgumentSyntax { Parent: BracketedArgumentListSyntax })
        {
            return true;
        }

        return text.Parent is ArgumentSyntax { Parent: ArgumentListSyntax { Parent: InvocationExpressionSyntax call } list } argument
            && call.Expression is MemberAccessExpressionSyntax { Name.Identifier.Text: var name }
            && name switch
            {
                "AddAttribute" => list.Arguments.IndexOf(argument) == 1 || !(list.Arguments[1].Expression is LiteralExpressionSyntax { Token.ValueText: var attribute } && Markup.Spoken.Contains(attribute)),
                "OpenElement" or "AddComponentParameter" => list.Arguments.IndexOf(argument) == 1,
                "ToString" or "TryParseExact" or "ParseExact" => true,
                _ => false,
            };
    }

    private static bool Read(ExpressionSyntax text, StringBuilder form, ref int holes)
    {
        switch (text)
        {
            case ParenthesizedExpressionSyntax p:
                return Read(p.Expression, form, ref holes);
            case LiteralExpressionSyntax l when l.IsKind(SyntaxKind.StringLiteralExpression):
                form.Append(Braced(l.Token.ValueText));
                return true;
            case InterpolatedStringExpressionSyntax interpolated:
                foreach (var part in interpolated.Contents)
                {
                    if (part is InterpolatedStringTextSyntax words)
                    {
                        form.Append(Braced(words.TextToken.ValueText.Replace("{{", "{", StringComparison.Ordinal).Replace("}}", "}", StringComparison.Ordinal)));
                    }
                    else
                    {
                        form.Append(CultureInfo.InvariantCulture, $"{{{holes++}}}");
                    }
                }

                return true;
            case BinaryExpressionSyntax sum when IsSum(sum):
                return Read(sum.Left, form, ref holes) & Read(sum.Right, form, ref holes);
            default:
                form.Append(CultureInfo.InvariantCulture, $"{{{holes++}}}");
                return true;
        }
    }

    private static string Braced(string text) => text.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal);

    private static string Renumbered(string form)
    {
        var n = 0;
        return Hole().Replace(form, _ => string.Create(CultureInfo.InvariantCulture, $"{{{n++}}}"));
    }

    private static void Add(string form, HashSet<string> found)
    {
        // A mark in front or behind ties a text to its neighbour and is no part of it.
        var text = Loose().Replace(Blanks.Single(form), "");
        if (Code().IsMatch(text))
        {
            // A rule's name is shown in words.
            text = text.Replace('.', ' ').Replace('-', ' ');
        }

        var words = Hole().Replace(text, " ").Trim();
        if (words.Count(char.IsLetter) < 2 || !Letters().IsMatch(words))
        {
            return;
        }

        // One word may be shown or be a key; something with marks of code in it is no text.
        if (words.Contains(' ', StringComparison.Ordinal) ? !Codelike().IsMatch(text) : Word().IsMatch(words))
        {
            found.Add(text);
        }
    }

    private static void OfJson(JsonElement json, HashSet<string> found)
    {
        switch (json.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (var member in json.EnumerateObject())
                {
                    OfJson(member.Value, found);
                }

                break;
            case JsonValueKind.Array:
                foreach (var item in json.EnumerateArray())
                {
                    OfJson(item, found);
                }

                break;
            case JsonValueKind.String:
                Add(Braced(json.GetString()!), found);
                break;
        }
    }

    private static IEnumerable<string> Cells(string csv) =>
        csv.Split('\n').Where(l => !l.StartsWith('#')).SelectMany(l => Cell().Matches(l)).Select(m => Braced(m.Value.Trim('"', ',').Replace("\"\"", "\"", StringComparison.Ordinal)));

    [GeneratedRegex(@"^[a-z]+(?:\.[a-z]+(?:-[a-z]+)*)+$")]
    private static partial Regex Code();

    [GeneratedRegex(@"^[;,.·–:] ?|(?:[,;·–]| \()$")]
    private static partial Regex Loose();

    [GeneratedRegex(@"<[a-z/!]")]
    private static partial Regex Tag();

    [GeneratedRegex(@"\{\d+\}")]
    private static partial Regex Hole();

    [GeneratedRegex(@"\p{L}{2,}")]
    private static partial Regex Letters();

    [GeneratedRegex(@"[{]{2}|=>|&&|\|\||^[-./#]|^\w+:\w+;|\.css|\(\?|var\(--|url\(")]
    private static partial Regex Codelike();

    [GeneratedRegex(@"^[‘“(]?\p{L}[\p{L}’'-]+[.:,!?…”’)]*$")]
    private static partial Regex Word();

    [GeneratedRegex("\"(?:[^\"]|\"\")*\"|[^,\r]+")]
    private static partial Regex Cell();
}
