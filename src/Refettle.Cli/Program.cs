using System.Runtime.InteropServices;
using System.Text;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Cli;
using Refettle.Solvers;
using Refettle.Solvers.Scheduling;

using var interrupt = new CancellationTokenSource();
void Stop(PosixSignalContext context)
{
    context.Cancel = !interrupt.IsCancellationRequested;
    interrupt.Cancel();
}

using var interruptSignal = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using var terminateSignal = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
var around = new Surroundings
{
    Out = Console.Out,
    Error = Console.Error,
    InColour = !Console.IsOutputRedirected && Environment.GetEnvironmentVariable("NO_COLOR") is null,
    IsWatched = !Console.IsErrorRedirected,
    Width = Console.IsOutputRedirected ? 120 : Math.Clamp(Console.WindowWidth, 60, 160),
    InDetail = Environment.GetEnvironmentVariable(Surroundings.DetailVariable) is not null,
    Clock = TimeProvider.System,
    Planner = () => new AccessPlanner(new ReducedSolver(new MixedIntegerSolver())),
    Scheduler = () => new ConstraintScheduler(),
    OpenLogbook = Store.Open,
    Store = Environment.GetEnvironmentVariable(Surroundings.StoreVariable) ?? Path.Combine("data", "refettle.db"),
    Content = Content.Folder(AppContext.BaseDirectory),
    Interrupt = interrupt.Token,
};
return (int)new Shell(around).Run(args);
