namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// Does parts 0 to parts − 1, in any order and as many at once as there are threads to spare. The rooms start no threads
/// themselves: in the browser the parts are done one after another.
/// </summary>
public delegate void Hands(int parts, Action<int> part);
