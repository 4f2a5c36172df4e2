using System.Text;

namespace Trundle.Sheets.Tests;

/// <summary>
/// Reads a clean QR code of versions 1 to 6 and level M, written from ISO/IEC 18004 (from memory) without the library that makes it: format, mask, order of
/// modules, blocks, and the remainder of the error correction, which is zero only where every module is right.
/// </summary>
internal static class QrReader
{
    // Level M: blocks, data and correction codewords of each block, by version.
    private static readonly (int Blocks, int Data, int Correction)[] LevelM = [(1, 16, 10), (1, 28, 16), (1, 44, 26), (2, 32, 18), (2, 43, 24), (4, 27, 16)];

    public static string Read(bool[,] modules)
    {
        var side = modules.GetLength(0);
        var version = (side - 17) / 4;
        version.ShouldBeInRange(1, 6);
        ((side - 17) % 4).ShouldBe(0);
        var format = Format(modules);
        (format >> 13).ShouldBe(0b00, "level M");
        var bits = Bits(modules, version, (format >> 10) & 7);
        var (blocks, data, correction) = LevelM[version - 1];
        var words = bits.Chunk(8).Where(c => c.Length == 8).Select(c => c.Aggregate(0, (word, bit) => (word << 1) | (bit ? 1 : 0))).ToList();
        words.Count.ShouldBe(blocks * (data + correction));
        var content = new List<int>();
        for (var b = 0; b < blocks; b++)
        {
            List<int> block = [.. Enumerable.Range(0, data).Select(i => words[(i * blocks) + b]), .. Enumerable.Range(0, correction).Select(i => words[(blocks * data) + (i * blocks) + b])];
            Enumerable.Range(0, correction).Select(power => Syndrome(block, power)).ShouldAllBe(s => s == 0);
            content.AddRange(block.Take(data));
        }

        return Text([.. content.SelectMany(word => Enumerable.Range(0, 8).Select(i => ((word >> (7 - i)) & 1) == 1))]);
    }

    private static int Format(bool[,] m)
    {
        var bits = 0;
        foreach (var (row, column) in new[] { (8, 0), (8, 1), (8, 2), (8, 3), (8, 4), (8, 5), (8, 7), (8, 8), (7, 8), (5, 8), (4, 8), (3, 8), (2, 8), (1, 8), (0, 8) })
        {
            bits = (bits << 1) | (m[row, column] ? 1 : 0);
        }

        bits ^= 0b101010000010010;

        // BCH(15, 5): the remainder by the generator is zero.
        var rest = bits;
        for (var i = 14; i >= 10; i--)
        {
            if (((rest >> i) & 1) == 1)
            {
                rest ^= 0b10100110111 << (i - 10);
            }
        }

        rest.ShouldBe(0, "format bits");
        return bits;
    }

    private static IEnumerable<bool> Bits(bool[,] m, int version, int mask)
    {
        var side = m.GetLength(0);
        var upwards = true;
        for (var right = side - 1; right > 0; right -= 2)
        {
            if (right == 6)
            {
                right--;
            }

            for (var i = 0; i < side; i++)
            {
                var row = upwards ? side - 1 - i : i;
                foreach (var column in new[] { right, right - 1 })
                {
                    if (!IsFunction(row, column, side, version))
                    {
                        yield return m[row, column] ^ Masked(mask, row, column);
                    }
                }
            }

            upwards = !upwards;
        }
    }

    private static bool IsFunction(int row, int column, int side, int version)
    {
        var alignment = side - 7;
        return (row <= 8 && column <= 8) || (row <= 8 && column >= side - 8) || (row >= side - 8 && column <= 8) || row == 6 || column == 6
            || (version >= 2 && Math.Abs(row - alignment) <= 2 && Math.Abs(column - alignment) <= 2);
    }

    private static bool Masked(int mask, int i, int j) => mask switch
    {
        0 => (i + j) % 2 == 0,
        1 => i % 2 == 0,
        2 => j % 3 == 0,
        3 => (i + j) % 3 == 0,
        4 => ((i / 2) + (j / 3)) % 2 == 0,
        5 => (i * j % 2) + (i * j % 3) == 0,
        6 => ((i * j % 2) + (i * j % 3)) % 2 == 0,
        _ => (((i + j) % 2) + (i * j % 3)) % 2 == 0,
    };

    /// <summary>The block's polynomial at a power of the primitive element of GF(256) by x⁸ + x⁴ + x³ + x² + 1.</summary>
    private static int Syndrome(List<int> block, int power)
    {
        var x = Enumerable.Range(0, power).Aggregate(1, (value, _) => Times(value, 2));
        return block.Aggregate(0, (sum, word) => Times(sum, x) ^ word);
    }

    private static int Times(int a, int b)
    {
        var product = 0;
        for (; b > 0; b >>= 1, a = (a << 1) ^ (a >= 128 ? 0x11d : 0))
        {
            product ^= (b & 1) == 1 ? a : 0;
        }

        return product;
    }

    /// <summary>Segments one after the other: digits, capitals and digits, or bytes.</summary>
    private static string Text(bool[] bits)
    {
        const string capitals = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
        var (at, text) = (0, new StringBuilder());
        while (bits.Length - at >= 4 && Number(4) is not 0 and var mode)
        {
            var length = Number(mode switch { 0b0001 => 10, 0b0010 => 9, 0b0100 => 8, _ => throw new InvalidOperationException($"mode {mode}") });
            switch (mode)
            {
                case 0b0001:
                    for (; length > 0; length -= 3)
                    {
                        var digits = Math.Min(3, length);
                        text.Append(Number((digits * 3) + 1).ToString(System.Globalization.CultureInfo.InvariantCulture).PadLeft(digits, '0'));
                    }

                    break;
                case 0b0010:
                    for (; length > 1; length -= 2)
                    {
                        var pair = Number(11);
                        text.Append(capitals[pair / 45]).Append(capitals[pair % 45]);
                    }

                    text.Append(length == 1 ? capitals[Number(6)].ToString() : "");
                    break;
                default:
                    text.Append(Encoding.UTF8.GetString([.. Enumerable.Range(0, length).Select(_ => (byte)Number(8))]));
                    break;
            }
        }

        return text.ToString();

        int Number(int count)
        {
            var value = 0;
            for (var i = 0; i < count; i++)
            {
                value = (value << 1) | (bits[at++] ? 1 : 0);
            }

            return value;
        }
    }
}
