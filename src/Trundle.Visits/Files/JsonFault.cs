using System.Text;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Why a file is not JSON at a place, in words for the person who wrote it: what stands there, and what should.</summary>
internal static class JsonFault
{
    /// <summary>What stood last before the fault.</summary>
    private enum Last
    {
        Nothing,
        Open,
        Comma,
        Colon,
        Key,
        Value,
        Bare,
        Close,
    }

    /// <summary>The sentence for the fault at a byte of the file, which the parser refused.</summary>
    /// <param name="bytes">The file in UTF-8.</param>
    /// <param name="at">The first byte that cannot stand there; the length where the file ends too soon.</param>
    /// <param name="mostDepth">How many brackets may stand one inside another.</param>
    public static string Words(ReadOnlySpan<byte> bytes, int at, int mostDepth)
    {
        var open = new Stack<byte>();
        var last = Last.Nothing;
        var bareFrom = 0;
        for (var i = 0; i < at; i++)
        {
            var c = bytes[i];
            switch (c)
            {
                case (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n':
                    break;
                case (byte)'"':
                    i = EndOfText(bytes, i, at);
                    if (i >= at)
                    {
                        return InText(bytes, at);
                    }

                    last = open.TryPeek(out var holder) && holder == '{' && last is Last.Open or Last.Comma ? Last.Key : Last.Value;
                    break;
                case (byte)'{' or (byte)'[':
                    open.Push(c);
                    last = Last.Open;
                    break;
                case (byte)'}' or (byte)']':
                    open.TryPop(out _);
                    last = Last.Close;
                    break;
                case (byte)',':
                    last = Last.Comma;
                    break;
                case (byte)':':
                    last = Last.Colon;
                    break;
                default:
                    bareFrom = last == Last.Bare && i > 0 && !IsDelimiter(bytes[i - 1]) ? bareFrom : i;
                    last = Last.Bare;
                    break;
            }
        }

        if (at >= bytes.Length)
        {
            return open.Count == 0 ? "The file ends too soon." : $"The file ends before its last '{(open.Peek() == '{' ? '}' : ']')}'; was it cut off?";
        }

        return open.Count >= mostDepth && bytes[at] is (byte)'{' or (byte)'[' ? "Too many brackets stand one inside another; no file here needs so many."
            : last == Last.Bare && !IsDelimiter(bytes[at - 1]) && !ClosesAnother(bytes[at], open) ? Bare(bytes, bareFrom)
            : Misplaced(bytes, at, open, last);
    }

    /// <summary>What is wrong with a character outside of any text.</summary>
    private static string Misplaced(ReadOnlySpan<byte> bytes, int at, Stack<byte> open, Last last)
    {
        var inObject = open.TryPeek(out var holder) && holder == '{';
        var read = Token(bytes, at);
        return (char)bytes[at] switch
        {
            '/' or '#' => "A comment stands here, and JSON has none; take it out.",
            '}' or ']' when last == Last.Comma => $"A comma stands before this '{read}' and nothing behind it; take the comma out.",
            '}' or ']' when last == Last.Colon => $"The value is missing before this '{read}'.",
            '}' or ']' => $"This '{read}' closes nothing that is open{(open.Count == 0 ? "" : $"; the last that is open is '{(char)holder}'")}.",
            ',' when last is Last.Comma or Last.Open or Last.Colon => "Nothing stands before this comma; put a value there or take the comma out.",
            _ when last is Last.Nothing => "The file should hold one JSON object in braces.",
            _ when open.Count == 0 => "The file goes on behind its last bracket; it should hold one JSON object and nothing else.",
            _ when last == Last.Key => $"A colon is missing here between the key and its value; '{read}' was read.",
            _ when inObject && last is Last.Open or Last.Comma => $"Here should stand a key in double quotes; '{read}' was read.",
            _ when last is Last.Open or Last.Comma or Last.Colon => Bare(bytes, at),
            _ => $"A comma or the closing '{(inObject ? '}' : ']')}' is missing before '{read}'.{(last == Last.Bare && char.IsAsciiLetter((char)bytes[at]) ? " A quantity with its unit stands in double quotes, for example \"45 g\"." : "")}",
        };
    }

    private static string Bare(ReadOnlySpan<byte> bytes, int at) =>
        $"'{Token(bytes, at)}' was read; a text, and a quantity with its unit, stands in double quotes, for example \"45 g\", and without quotes only a number such as 0.5, true, false or null.";

    /// <summary>A closing bracket where the last that is open is of the other kind, or none is.</summary>
    private static bool ClosesAnother(byte c, Stack<byte> open) =>
        c is (byte)'}' or (byte)']' && !(open.TryPeek(out var holder) && holder == (c == '}' ? '{' : '['));

    /// <summary>What is wrong inside a text.</summary>
    private static string InText(ReadOnlySpan<byte> bytes, int at) =>
        at >= bytes.Length ? "A text is not closed: its last double quote is missing."
        : bytes[at] is (byte)'\n' or (byte)'\r' ? "A text goes on to the next line; close it with a double quote on its own line."
        : bytes[at] < 0x20 ? "A tab or another control character stands in a text; take it out, or write \\t."
        : "A backslash in a text is written twice (\\\\); alone it stands only before \" \\ / b f n r t, or before u and four hexadecimal digits.";

    /// <summary>The place of the closing quote of a text, or the end where it does not close before it.</summary>
    private static int EndOfText(ReadOnlySpan<byte> bytes, int quote, int end)
    {
        for (var i = quote + 1; i < end; i++)
        {
            if (bytes[i] == '\\')
            {
                i++;
            }
            else if (bytes[i] == '"')
            {
                return i;
            }
        }

        return end;
    }

    /// <summary>What stands at a place up to the next delimiter, cut to fit a message.</summary>
    private static string Token(ReadOnlySpan<byte> bytes, int at)
    {
        var end = at + 1;
        while (end < bytes.Length && end - at < 80 && !IsDelimiter(bytes[at]) && !IsDelimiter(bytes[end]))
        {
            end++;
        }

        // A cut within a character of several bytes leaves it out.
        while (end < bytes.Length && (bytes[end] & 0xC0) == 0x80)
        {
            end++;
        }

        return NumberText.Shown(Encoding.UTF8.GetString(bytes[at..end]));
    }

    private static bool IsDelimiter(byte c) => c is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n' or (byte)',' or (byte)':' or (byte)'{' or (byte)'}' or (byte)'[' or (byte)']' or (byte)'"';
}
