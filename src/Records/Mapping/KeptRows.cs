namespace WitnessMark.Records;

/// <summary>
/// A row of the stores' desk under its kind: it is read and written whole, so its words are kept as one text. See
/// docs/decisions/2026-11-25-kept-rows.md.
/// </summary>
/// <param name="Kind">The record's own name.</param>
/// <param name="Text">JSON.</param>
sealed record KeptDecision(Guid Id, Guid VehicleId, string Kind, string Text);

/// <inheritdoc cref="KeptDecision"/>
/// <param name="PartId">Beside the text too, so that the facts of one part are found without reading the others.</param>
sealed record KeptFact(Guid Id, Guid VehicleId, string Kind, string Text, Guid? PartId = null);
