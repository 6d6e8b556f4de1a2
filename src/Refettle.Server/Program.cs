Console.Error.WriteLine("The logbook's store is not built in yet.");
return 1;
