using ProcScript.Analysis.Plans.Words;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>What one card has told so far.</summary>
internal sealed class CardTold
{
    private readonly List<(Alert Alert, MachineItem? Item)> _alerts = [];
    private readonly HashSet<UsualCaution> _usual = [];

    /// <summary>Whether who has read the first has read the second: the same text under a word at least as strong.</summary>
    public static bool Covers(Alert read, Alert alert) => read.Text == alert.Text && read.Word <= alert.Word;

    /// <summary>Takes an author's alert, of an item or of a step; false where the card has told it already.</summary>
    public bool Add(Alert alert, MachineItem? item)
    {
        if (_alerts.Exists(told => Covers(told.Alert, alert)))
        {
            return false;
        }

        _alerts.Add((alert, item));
        return true;
    }

    /// <summary>Takes a usual caution; false where the card has it already, or an author's alert that says it.</summary>
    public bool Add(UsualCaution caution, Hazard hazard, MachineItem item) =>
        !_alerts.Exists(told => Speaks(told.Item, caution, hazard, item) && caution.IsSaidBy(told.Alert)) && _usual.Add(caution);

    /// <summary>Whether the card has a usual caution.</summary>
    public bool Has(UsualCaution caution) => _usual.Contains(caution);

    /// <summary>
    /// Whether an alert of <paramref name="speaker"/> may say it: its words speak of that item, so only where it is marked for the same. A
    /// battery that can burst says nothing of the pressure in a pipe, nor one of 400 V of the mains.
    /// </summary>
    private static bool Speaks(MachineItem? speaker, UsualCaution caution, Hazard hazard, MachineItem item) =>
        speaker is null || speaker == item
        || (speaker.Hazards.Contains(hazard) && UsualCautions.ForLettingGo(hazard, speaker).Kind == caution.Kind);
}
