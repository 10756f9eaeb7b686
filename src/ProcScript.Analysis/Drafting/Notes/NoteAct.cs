namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>What a mechanic's words ask for.</summary>
internal enum NoteAct
{
    /// <summary>To undo what is turned.</summary>
    Undo,

    /// <summary>To slacken what is turned.</summary>
    Loosen,

    /// <summary>To let go what snaps.</summary>
    Release,

    /// <summary>To pull a plug.</summary>
    Unplug,

    /// <summary>To open whatever runs there: a plug, a hose, a supply.</summary>
    Disconnect,

    /// <summary>To cut.</summary>
    Cut,

    /// <summary>To move out of the way.</summary>
    Aside,

    /// <summary>To take off, whatever it is.</summary>
    Remove,

    /// <summary>To move a control.</summary>
    Set,

    /// <summary>To switch off and keep off.</summary>
    Isolate,

    /// <summary>To let a fluid out.</summary>
    Empty,

    /// <summary>To prop.</summary>
    Support,

    /// <summary>To put a new one in.</summary>
    Replace,

    /// <summary>To clean.</summary>
    Clean,

    /// <summary>To look at.</summary>
    Inspect,

    /// <summary>To mend.</summary>
    Repair,

    /// <summary>To set right.</summary>
    Adjust,

    /// <summary>To measure.</summary>
    Measure,

    /// <summary>To check.</summary>
    Check,

    /// <summary>To put back: the way back is derived.</summary>
    PutBack,

    /// <summary>To wait.</summary>
    Wait,

    /// <summary>To see to something on the way, such as a photo: nothing comes off by it.</summary>
    Tend,

    /// <summary>To move a lock, a lever or a tab, so that something lets go.</summary>
    Unlock,
}
