using System.Collections.Immutable;
using WitnessMark.Stores;
using WitnessMark.Stores.Photographs;

namespace WitnessMark.Web.Client.Wire;

/// <summary>How far the host is with the smaller copies of the pictures.</summary>
/// <param name="Unreadable">No copy can be made of these; the originals stay as they are.</param>
/// <param name="SecondsLeft">Null until one was made.</param>
public sealed record PictureWork(int Made, int Waiting, int Unreadable, bool Paused, double? SecondsLeft);

/// <summary>A file of pictures that is wanted: the chosen ones, or all that fit.</summary>
/// <param name="Id">Made by who asks.</param>
/// <param name="Chosen">Empty for all that fit.</param>
/// <param name="Originals">As the camera wrote them, with place and serial numbers. Only on the host's own machine.</param>
/// <param name="Marked">With what is drawn on them.</param>
public sealed record ExportAsked(Guid Id, Guid? PartId, bool NoPart, string Words, ImmutableArray<Guid> Chosen, bool Originals, bool Marked);

/// <param name="State">waiting, running, done or stopped.</param>
public sealed record ExportStanding(Guid Id, string State, int Done, int Total);

/// <summary>One picture with what is drawn on it.</summary>
/// <param name="Layer">Version 0 where nothing was drawn yet.</param>
public sealed record PictureOpened(PictureStanding Standing, Versioned<PictureLayer> Layer);
