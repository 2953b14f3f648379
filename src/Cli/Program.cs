using WitnessMark.Cli;

return Wmark.Run(args, new Desk(Console.Out, Console.Error, TimeProvider.System));
