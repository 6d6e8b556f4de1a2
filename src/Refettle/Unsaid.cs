using System.Collections;
using System.Runtime.CompilerServices;
using System.Text.Json.Serialization.Metadata;

namespace Refettle;

/// <summary>What need not be written since whoever reads fills it in: no, nought, the first word, an empty text or
/// list, where the record has that by itself. Of a described car it is a fifth, and each phone would read it at every start.</summary>
internal static class Unsaid
{
    /// <summary>A default that says something, one piece or the whole car, is written: it may be another one day.</summary>
    public static void LeaveOut(JsonTypeInfo type)
    {
        if (type.CreateObject?.Invoke() is not { } fresh)
            return;
        foreach (var property in type.Properties.Where(property => property is { Get: not null, Set: not null, IsRequired: false }))
        {
            var filledIn = property.Get!(fresh);
            if (SaysNothing(filledIn))
                property.ShouldSerialize = (_, value) => !Equals(value, filledIn);
        }
    }

    private static bool SaysNothing(object? value) =>
        value is null
        || (value is IEnumerable list
            ? !list.Cast<object>().Any()
            : value is ValueType && value.Equals(RuntimeHelpers.GetUninitializedObject(value.GetType())));
}
