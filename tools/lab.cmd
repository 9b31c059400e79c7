@echo off
rem Starts the laboratory from its sources, building it as palmturn.cmd does.
setlocal
set "PALMTURN_JAR=palmturn-lab.jar"
call "%~dp0palmturn.cmd" %*
exit /b %ERRORLEVEL%
