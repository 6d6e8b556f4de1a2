using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Text;

namespace Refettle;

/// <summary>Dates and times in the exchange form, after ISO 8601: <c>2027-01-09</c>, <c>18:30:00</c>, <c>2027-01-09T18:30:00</c>.</summary>
internal static class TimeJson
{
    // Patterns are made when first needed: a page that shows no date starts without them.
    public static IEnumerable<JsonConverter> Converters { get; } =
    [
        new TextConverter<LocalDate>(() => LocalDatePattern.Iso),
        new TextConverter<LocalTime>(() => LocalTimePattern.ExtendedIso),
        new TextConverter<LocalDateTime>(() => LocalDateTimePattern.ExtendedIso),
        new TextConverter<Instant>(() => InstantPattern.ExtendedIso),
    ];

    private sealed class TextConverter<T>(Func<IPattern<T>> pattern) : JsonConverter<T>
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String && pattern().Parse(reader.GetString()!) is { Success: true } read
                ? read.Value
                : throw new JsonException("A date or time is written after ISO 8601.");

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            writer.WriteStringValue(pattern().Format(value));
    }
}
