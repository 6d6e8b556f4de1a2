using System.Text.Encodings.Web;
using System.Text.Json;

namespace Refettle.SaleFile.Sealing;

/// <summary>The record's lines but its entries, and their JSON: pure ASCII without angle brackets, so that it can
/// lie in a page or a PDF as it is.</summary>
internal static class RecordLines
{
    public const string Form = "refettle-sale-1";
    public const string Algorithm = "ecdsa-p256-sha256";

    /// <summary>How a record begins, wherever it lies.</summary>
    public const string Begin = "{\"saleFile\":{\"form\":\"";

    /// <summary>How its last line begins.</summary>
    public const string End = "{\"signature\":{\"algorithm\":\"";

    /// <summary>What stands before the digits of the file's own signature.</summary>
    public const string BeforeFile = "\"file\":\"";

    public const int SignatureDigits = 128;

    /// <summary>Stands where the file's own signature comes.</summary>
    public static string Open { get; } = new('0', SignatureDigits);

    public static JsonSerializerOptions Json { get; } = new(ExchangeJson.Options) { Encoder = JavaScriptEncoder.Default };

    public static string Of<T>(T line) => JsonSerializer.Serialize(line, Json);
}

internal sealed record HeaderLine(RecordHeader SaleFile);

internal sealed record ManifestLine(ValueList<ManifestRun> Manifest);

internal sealed record SignatureLine(RecordSignature Signature);

/// <summary>What a record is about.</summary>
/// <param name="Made">The clock when it was made.</param>
/// <param name="Entries">How many it was made with.</param>
/// <param name="Hidden">What was left out, in words.</param>
public sealed record RecordHeader(string Form, string Car, DateTimeOffset Made, int Entries, ValueList<string> Hidden);

/// <summary>Entries of one device with numbers in a row.</summary>
/// <param name="From">Number of the first.</param>
public sealed record ManifestRun(string Device, long From, ValueList<string> Hashes);

/// <param name="Manifest">Over SHA-256 of header line, line feed, manifest line.</param>
/// <param name="File">Over SHA-256 of the whole file with zeros in this place.</param>
internal sealed record RecordSignature(string Algorithm, string Key, string Manifest, string File);
