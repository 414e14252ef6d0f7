@echo off
rem Builds Alburnum in Release when a source is newer than the build, then runs it.
setlocal
set "root=%~dp0"
set "built=%root%artifacts\bin\Alburnum.Cli\release\alburnum-cli.dll"
where dotnet >nul 2>nul || (echo alburnum: the .NET 10 SDK is not on the PATH; install it, then run this again. 1>&2 & exit /b 2)
pushd "%root%"
rem MSBuild itself decides what is out of date; a build with nothing to do takes a second or two.
if not exist artifacts mkdir artifacts
dotnet build src\Alburnum.Cli -c Release -v quiet --nologo > artifacts\build.log 2>&1 || (type artifacts\build.log 1>&2 & popd & exit /b 1)
popd
dotnet exec "%built%" %*
exit /b %ERRORLEVEL%
