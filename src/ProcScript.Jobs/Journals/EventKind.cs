namespace ProcScript.Jobs.Journals;

/// <summary>What an event of a job is.</summary>
public enum EventKind
{
    /// <summary>The job was opened. The first event of every journal, and of no other.</summary>
    Opened,

    /// <summary>A step was done.</summary>
    Done,

    /// <summary>A step that was done is undone, or an event was a slip.</summary>
    Undone,

    /// <summary>Something was done that is no step of the plan.</summary>
    Did,

    /// <summary>A reading was taken.</summary>
    Reading,

    /// <summary>A photo was taken.</summary>
    Photo,

    /// <summary>A note.</summary>
    Note,

    /// <summary>Something broke.</summary>
    Broke,

    /// <summary>Pieces were not there, or are lost.</summary>
    Missing,

    /// <summary>Pieces more than the plan knows of came off, or one turned up.</summary>
    Found,

    /// <summary>A bag was counted, or put elsewhere.</summary>
    Bag,

    /// <summary>The work goes over to somebody else.</summary>
    HandOver,

    /// <summary>The work stops.</summary>
    Pause,

    /// <summary>The work goes on.</summary>
    Resume,

    /// <summary>Somebody signs.</summary>
    Sign,

    /// <summary>The refit was derived anew from how the machine stands.</summary>
    Replanned,

    /// <summary>The job goes on by a newer text of its procedure.</summary>
    Rebased,

    /// <summary>The job was closed. Nothing comes after it but notes.</summary>
    Closed,
}

/// <summary>What kinds of events have in common.</summary>
public static class EventKinds
{
    extension(EventKind kind)
    {
        /// <summary>Whether an event of that kind is one that went otherwise than planned, however the machine stands.</summary>
        public bool IsDeviation => kind is EventKind.Did or EventKind.Broke or EventKind.Missing or EventKind.Found;
    }
}
