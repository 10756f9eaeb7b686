namespace ProcScript.Model.Procedures;

/// <summary>The verbs of the language. What each needs and does stands in the action table of the analysis.</summary>
public enum Verb
{
#pragma warning disable CS1591 // each is the word itself
    Undo, Loosen, Release, Unplug, Disconnect, Cut, Aside, Remove, Set, Isolate, Verify, Empty, Support,
    Cap, Uncap,
    Fasten, Snug, Tighten, Engage, Plug, Connect, Renew, Return, Fit, Restore, Fill, Unsupport, Retorque,
    Strip,
    Replace, Repair, Clean, Inspect, Adjust, Measure, Task, Check, Record, Pause,
    Discard,
#pragma warning restore CS1591
}
