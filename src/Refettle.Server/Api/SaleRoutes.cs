using Refettle.Logbook;
using Refettle.Paper;
using Refettle.Paper.Html;
using Refettle.Paper.Pdf;
using Refettle.SaleFile;
using Refettle.Server.Guards;
using Refettle.Storage;

namespace Refettle.Server.Api;

/// <summary>The sale file, to download.</summary>
internal static class SaleRoutes
{
    public static void Map(IEndpointRouteBuilder api) => api.MapGet("cars/{car}/sale-file.{form}", Give);

    private static IResult Give(
        string car, string form, ILogbook logbook, Garage garage, TimeProvider clock, bool prices = false, bool names = false,
        bool hours = false)
    {
        if (logbook is not IGarageStore store)
            return Problems.Of(StatusCodes.Status503ServiceUnavailable, "This server has no key to sign with",
                "Make the file on the command line.");
        if (garage.LastPosition(car) is null)
            return Problems.NoSuchCar(car);
        var (write, type) = Form(form);
        if (write is null)
            return Problems.Of(StatusCodes.Status404NotFound, $"There is no sale file of the form {form}", "Ask for html or pdf.");
        var history = CarHistory.Of(car, logbook.Read(car).Select(kept => kept.Entry));
        var made = SaleFiles.Of(history, new(prices, names, hours, []), store, clock, paper => Written(paper, write));
        return made.IsGood
            ? Results.File(made.Value, type, $"{car}.{form}")
            : Problems.Of(StatusCodes.Status503ServiceUnavailable, "The file cannot be signed", "See the faults.", made.Faults);
    }

    private static (Action<Stream, SalePaper>? Write, string Type) Form(string form) => form switch
    {
        "html" => (HtmlPaper.Write, "text/html; charset=utf-8"),
        "pdf" => (PdfPaper.Write, "application/pdf"),
        _ => (null, ""),
    };

    /// <summary>On the disk, since files with photos are large; gone once it is sent.</summary>
    private static FileStream Written(SalePaper paper, Action<Stream, SalePaper> write)
    {
        var file = new FileStream(Path.Combine(Path.GetTempPath(), Path.GetRandomFileName()), new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.ReadWrite,
            Options = FileOptions.DeleteOnClose,
        });
        write(file, paper);
        file.Position = 0;
        return file;
    }
}
