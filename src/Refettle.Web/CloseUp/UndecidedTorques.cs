using Refettle.CloseUp;
using Refettle.Logbook;
using Refettle.Web.Garage;

namespace Refettle.Web.CloseUp;

/// <summary>Torques of the open car that contradict each other; looked for once after every change of its log.</summary>
public sealed class UndecidedTorques(OpenCar open)
{
    private Looked? _looked;

    public ValueList<TorqueConflict> Found
    {
        get
        {
            if (_looked is null || !ReferenceEquals(_looked.At, open.History))
                _looked = new(open.History, open.History is { } history ? TorqueConflicts.Of(history) : []);
            return _looked.Found;
        }
    }

    private sealed record Looked(CarHistory? At, ValueList<TorqueConflict> Found);
}
