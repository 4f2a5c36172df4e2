using System.Text;

namespace Trundle.Tests;

/// <summary>Texts that are nearly right: a valid one with a few seeded changes, as a hurried hand, a bad scan or another program makes them.</summary>
/// <param name="valid">Texts that can be read.</param>
/// <param name="characters">What is put in.</param>
internal sealed class SpoiltText(string[] valid, string characters)
{
    /// <summary>One text with some changes from the random numbers given, so that a seed gives the same texts again.</summary>
    public string Next(Random random)
    {
        var text = new StringBuilder(valid[random.Next(valid.Length)]);
        for (var changes = random.Next(0, 5); changes > 0; changes--)
        {
            var at = random.Next(text.Length + 1);
            switch (random.Next(7))
            {
                case 0 when at < text.Length:
                    text.Remove(at, 1);
                    break;
                case 1:
                    text.Insert(at, characters[random.Next(characters.Length)]);
                    break;
                case 2 when at < text.Length:
                    text[at] = characters[random.Next(characters.Length)];
                    break;
                case 3 when at < text.Length:
                    text.Insert(at, text.ToString(at, random.Next(text.Length - at + 1)));
                    break;
                case 4 when at < text.Length:
                    text[at] = char.IsUpper(text[at]) ? char.ToLowerInvariant(text[at]) : char.ToUpperInvariant(text[at]);
                    break;
                case 5:
                    text.Insert(at, valid[random.Next(valid.Length)]);
                    break;
                default:
                    if (random.Next(40) == 0)
                    {
                        text.Insert(at, new string(characters[random.Next(characters.Length)], random.Next(1, 5000)));
                    }

                    break;
            }
        }

        return text.ToString();
    }

    /// <summary>A text as it can stand in a test's message.</summary>
    public static string Escaped(string text) =>
        string.Concat((text.Length > 300 ? text[..300] : text).Select(c => c is > '\u001f' and < '\u007f' ? c.ToString() : $"\\u{(int)c:x4}"));

    /// <summary>A refusal says what is wrong in one sentence that a terminal can show.</summary>
    public static void ShouldBeTold(Measures.Problem? problem, string text)
    {
        problem!.Code.ShouldNotBeNullOrWhiteSpace(Escaped(text));
        problem.Message.ShouldEndWith(".", Case.Sensitive, Escaped(text));
        problem.Message.Length.ShouldBeLessThan(500, Escaped(text));
        problem.Message.Any(c => char.IsControl(c) || char.IsSurrogate(c)).ShouldBeFalse(Escaped(text));
    }
}
