namespace ProcScript.Analysis.Settings;

/// <summary>How a shop writes the names of things.</summary>
public enum NameStyle
{
    /// <summary>As every author likes.</summary>
    Any,

    /// <summary><c>seat_bolts</c></summary>
    Snake,

    /// <summary><c>seatBolts</c></summary>
    Camel,

    /// <summary><c>SeatBolts</c></summary>
    Pascal,

    /// <summary><c>SEAT_BOLTS</c></summary>
    Upper,
}
