@echo off
rem Builds Alburnum in Release when a source is newer than the build, then runs it.
setlocal
set "root=%~dp0"
set "built=%root%artifacts\bin\Alburnum.Cli\release\alburnum-cli.dll"
where dotnet >nul 2>nul || (echo alburnum: the .NET 10 SDK is not on the PATH; install it, then run this again. 1>&2 & exit /b 2)
pushd "%root%"
if not exist artifacts mkdir artifacts
rem One build at a time: a second first run waits for the first, ten minutes at most.
set /a waited=0
:wait
mkdir artifacts\building 2>nul && goto build
if %waited%==0 echo Another run is building Alburnum; waiting for it ... 1>&2
if %waited% geq 600 (echo alburnum: artifacts\building is still there after ten minutes; if no build is running, delete that folder. 1>&2 & popd & exit /b 2)
set /a waited+=1
ping -n 2 127.0.0.1 >nul
goto wait
:build
rem MSBuild itself decides what is out of date; a build with nothing to do takes a second or two.
dotnet build src\Alburnum.Cli -c Release -v quiet --nologo > artifacts\build.log 2>&1
set "failed=%ERRORLEVEL%"
if not %failed%==0 type artifacts\build.log 1>&2
rmdir /s /q artifacts\building
popd
if not %failed%==0 exit /b 1
dotnet exec "%built%" %*
exit /b %ERRORLEVEL%
