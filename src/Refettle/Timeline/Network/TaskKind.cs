namespace Refettle.Timeline.Network;

/// <summary>What kind of thing a task is.</summary>
public enum TaskKind
{
    /// <summary>Steps of the plan: undo, take off, drain.</summary>
    Strip,

    /// <summary>The car is put into another stance.</summary>
    Stance,

    /// <summary>The car is moved to another place.</summary>
    Move,

    /// <summary>A stuck joint is soaked, so that time can work on it.</summary>
    Soak,

    /// <summary>Rubber and plastic near a try are shielded.</summary>
    Shield,

    /// <summary>Tries at a stuck joint, the last of which opens it.</summary>
    Try,

    /// <summary>The own work of a job, or work on a part.</summary>
    Work,

    /// <summary>A coat of paint, primer or wax.</summary>
    Coat,

    /// <summary>Something is ordered.</summary>
    Order,

    /// <summary>Something is packed, listed and sent out.</summary>
    Send,

    /// <summary>What came back is counted and looked over.</summary>
    Return,

    /// <summary>Time passes without anybody: soak, cure, delivery, outside shop.</summary>
    Wait,

    /// <summary>A body is braced, or freed of its brace.</summary>
    Brace,

    /// <summary>Panel gaps are measured.</summary>
    Gaps,

    /// <summary>Steps taken back: fit, close, refill.</summary>
    Refit,

    /// <summary>A repair is sealed against weather.</summary>
    Seal,

    /// <summary>A check at the end: bleed, torque at ride height, alignment, road test.</summary>
    Check,

    /// <summary>What was drained, worn and scraped off is handed in.</summary>
    HandIn,

    /// <summary>A new part is held up to the car while it can still go back.</summary>
    TrialFit,

    /// <summary>Added by the owner.</summary>
    Own,
}
