using System.Text.Json;
using Refettle.Web.Garage;

namespace Refettle.Web.Tests.Json;

/// <summary>What the trimmed pages are asked with is worth asking: nearly all of it can be read, and comes back the same.</summary>
public sealed class JsonSampleTests
{
    [Fact]
    public void Each_type_has_a_sample_that_is_read_and_written_as_it_was()
    {
        Assert.True(PageJson.Types.Count > 200);
        foreach (var type in PageJson.Types)
        {
            var text = JsonSample.Of(type).ToJsonString(ExchangeJson.Options);
            var back = JsonEcho.Echo(type.AssemblyQualifiedName!, text);
            Assert.Equal(back, JsonEcho.Echo(type.AssemblyQualifiedName!, back));
        }
    }

    [Fact]
    public void Some_of_those_around_it_are_refused()
    {
        var refused = PageJson.Types.SelectMany(type => JsonSample.Around(type).Select(sample => (type, sample))).Count(ask => IsRefused(ask.type, ask.sample.ToJsonString(ExchangeJson.Options)));
        Assert.True(refused > 500, $"{refused}");
    }

    private static bool IsRefused(Type type, string text)
    {
        try
        {
            return JsonEcho.Echo(type.AssemblyQualifiedName!, text).Length < 0;
        }
        catch (JsonException)
        {
            return true;
        }
    }
}
