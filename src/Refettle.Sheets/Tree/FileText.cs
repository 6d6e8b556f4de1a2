using System.Text;

namespace Refettle.Sheets.Tree;

/// <summary>Turns the bytes of a file into text, or says in one message why not.</summary>
internal static class FileText
{
    private static readonly UTF8Encoding _strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static Result<string> Decode(ReadOnlySpan<byte> bytes, string file)
    {
        if (bytes.Length > Limits.Bytes)
            return TooLong(file, bytes.Length);
        if (bytes is [0xFE, 0xFF, ..] or [0xFF, 0xFE, ..] || (bytes.Length >= 2 && (bytes[0] == 0 || bytes[1] == 0)))
            return Refused(file, 1, 1, "the file is in UTF-16 or UTF-32", "Save it as UTF-8");
        if (bytes is [0xEF, 0xBB, 0xBF, ..])
            bytes = bytes[3..];
        try
        {
            return Check(_strict.GetString(bytes), file);
        }
        catch (DecoderFallbackException fault)
        {
            var (line, column) = Place(bytes[..Math.Clamp(fault.Index, 0, bytes.Length)]);
            return Refused(file, line, column, "the file is not in UTF-8 (an old 8-bit encoding?)", "Save it as UTF-8");
        }
    }

    /// <summary>Refuses text that is too long or holds characters that no text file has.</summary>
    public static Result<string> Check(string text, string file)
    {
        if (text.Length > Limits.Bytes)
            return TooLong(file, text.Length);
        if (text.StartsWith('\uFEFF'))
            text = text[1..];
        var bad = text.AsSpan().IndexOfAnyExceptInRange(' ', '\uFFFD');
        for (var from = 0; bad >= 0; bad = text.AsSpan(from).IndexOfAnyExceptInRange(' ', '\uFFFD'))
        {
            from += bad + 1;
            if (text[from - 1] is not ('\n' or '\r' or '\t'))
                return Control(text, from - 1, file);
        }

        return Result<string>.Good(text);
    }

    private static Result<string> Control(string text, int at, string file)
    {
        var line = text.AsSpan(0, at).Count('\n') + 1;
        var column = at - text.LastIndexOf('\n', Math.Max(0, at - 1));
        return Refused(file, line, Math.Max(1, column), $"there is a control character (U+{(int)text[at]:X4})",
            "Remove it: a sheet is plain text");
    }

    private static Result<string> TooLong(string file, int length) => Refused(file, 1, 1,
        $"the file has {length / 1024 / 1024} MB", $"Split it: at most {Limits.Bytes / 1024 / 1024} MB are read");

    private static Result<string> Refused(string file, int line, int column, string found, string mend) =>
        Result<string>.Bad(new Fault("file", found, mend) { File = file, Line = line, Column = column });

    private static (int Line, int Column) Place(ReadOnlySpan<byte> before) =>
        (before.Count((byte)'\n') + 1, before.Length - before.LastIndexOf((byte)'\n'));
}
