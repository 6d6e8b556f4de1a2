using System.Reflection;
using System.Runtime.InteropServices;

namespace Refettle.Solvers.Highs;

/// <summary>The C interface of HiGHS, from the library that the solver package brings.</summary>
/// <remarks>The package's own wrapper reports the objective as the bound, loses solutions at a time limit and cannot be stopped;
/// see docs/decisions.</remarks>
internal static partial class HighsLibrary
{
    public const double Infinity = 1e30;

    private const string Name = "highs";

    static HighsLibrary() => NativeLibrary.SetDllImportResolver(typeof(HighsLibrary).Assembly, Resolve);

    /// <summary>Called by HiGHS at its checkpoints; writing 1 to the first integer of <c>input</c> stops it.</summary>
    public delegate void Checkpoint(int type, nint message, nint output, nint input, nint user);

    [LibraryImport(Name, EntryPoint = "Highs_create")]
    public static partial nint Create();

    [LibraryImport(Name, EntryPoint = "Highs_destroy")]
    public static partial void Destroy(nint highs);

    [LibraryImport(Name, EntryPoint = "Highs_setBoolOptionValue", StringMarshalling = StringMarshalling.Utf8)]
    public static partial int SetOption(nint highs, string option, int value);

    [LibraryImport(Name, EntryPoint = "Highs_setDoubleOptionValue", StringMarshalling = StringMarshalling.Utf8)]
    public static partial int SetOption(nint highs, string option, double value);

    [LibraryImport(Name, EntryPoint = "Highs_passMip")]
    public static partial int PassModel(
        nint highs, int columns, int rows, int entries, int format, int sense, double offset, double[] cost, double[] least, double[] most,
        double[] rowLeast, double[] rowMost, int[] start, int[] index, double[] value, int[] isInteger);

    [LibraryImport(Name, EntryPoint = "Highs_addRow")]
    public static partial int AddRow(nint highs, double least, double most, int entries, int[] index, double[] value);

    [LibraryImport(Name, EntryPoint = "Highs_setSolution")]
    public static partial int SetSolution(nint highs, double[] columns, double[]? rows, double[]? columnDuals, double[]? rowDuals);

    [LibraryImport(Name, EntryPoint = "Highs_setCallback")]
    public static partial int SetCallback(nint highs, Checkpoint checkpoint, nint user);

    [LibraryImport(Name, EntryPoint = "Highs_startCallback")]
    public static partial int StartCallback(nint highs, int type);

    [LibraryImport(Name, EntryPoint = "Highs_run")]
    public static partial int Run(nint highs);

    [LibraryImport(Name, EntryPoint = "Highs_getModelStatus")]
    public static partial int ModelStatus(nint highs);

    [LibraryImport(Name, EntryPoint = "Highs_getDoubleInfoValue", StringMarshalling = StringMarshalling.Utf8)]
    public static partial int Info(nint highs, string name, out double value);

    [LibraryImport(Name, EntryPoint = "Highs_getIntInfoValue", StringMarshalling = StringMarshalling.Utf8)]
    public static partial int Info(nint highs, string name, out int value);

    [LibraryImport(Name, EntryPoint = "Highs_getSolution")]
    public static partial int Solution(
        nint highs, [Out] double[] columns, [Out] double[] columnDuals, [Out] double[] rows, [Out] double[] rowDuals);

    private static nint Resolve(string name, Assembly assembly, DllImportSearchPath? path)
    {
        if (name != Name)
            return 0;
        var file = OperatingSystem.IsWindows() ? "highs.dll" : OperatingSystem.IsMacOS() ? "libhighs.1.dylib" : "libhighs.so.1";
        return NativeLibrary.Load(file, assembly, path);
    }
}
