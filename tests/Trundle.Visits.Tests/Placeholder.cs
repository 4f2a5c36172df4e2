namespace Trundle.Visits.Tests;
