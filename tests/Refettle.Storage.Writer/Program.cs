using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Storage;

// FILE CAR COUNT NAME: writes COUNT notes "NAME 1", "NAME 2" … and prints the identifier of each once it is acknowledged.
var (file, car, count, name) = (args[0], args[1], int.Parse(args[2]), args[3]);
var opened = LogbookStore.Open(file, TimeProvider.System, RandomNumberGenerator.Create());
if (!opened.IsGood)
{
    Console.Error.WriteLine(string.Join('\n', opened.Faults));
    return 1;
}

using var logbook = opened.Value;
for (var i = 1; i <= count; i++)
{
    var written = logbook.Write(car, new Noted($"{name} {i}", null));
    if (!written.IsGood)
    {
        Console.Error.WriteLine(string.Join('\n', written.Faults));
        return 1;
    }

    Console.WriteLine(written.Value[0].Id);
    Console.Out.Flush();
}

return 0;
