using System.Runtime.InteropServices;

namespace Alburnum.Unpacking;

/// <summary>
/// A filter of system calls for every thread of this process: those that reach the network, other programs or other processes fail.
/// Source: Linux manual pages seccomp(2) and bpf(2); numbers of calls from the kernel's tables for x86-64 and 64-bit ARM.
/// </summary>
internal static unsafe partial class SystemCalls
{
    private const int NoNewPrivileges = 38;
    private const int SetModeFilter = 1;
    private const int AllThreads = 1;

    private const ushort Load = 0x20;
    private const ushort JumpIfEqual = 0x15;
    private const ushort JumpIfAtLeast = 0x35;
    private const ushort Return = 0x06;
    private const uint CallNumber = 0;
    private const uint Processor = 4;
    private const uint Allow = 0x7FFF0000;
    private const uint FailNotPermitted = 0x00050001;

    /// <summary>Numbers from here on call the same kernel by another table.</summary>
    private const uint OtherTable = 0x40000000;

    /// <summary>Forbids them; does nothing on a processor whose numbers are not known here.</summary>
    /// <exception cref="InvalidOperationException">The kernel refuses the filter.</exception>
    public static void Forbid()
    {
        if (Table() is not { } table)
            return;
        var filter = Filter(table);
        fixed (Instruction* first = filter)
        {
            var program = new FilterProgram { Length = (ushort)filter.Length, First = first };
            if (
                prctl(NoNewPrivileges, 1, 0, 0, 0) != 0
                || syscall(table.Seccomp, SetModeFilter, AllThreads, (nint)(&program)) != 0
            )
                throw new InvalidOperationException("The system calls could not be limited.");
        }
    }

    /// <summary>Whether the kernel opens a queue of calls (io_uring), through which the calls themselves would pass no filter.</summary>
    public static bool OpensQueue()
    {
        const int Setup = 425;
        const int ParametersBytes = 120;
        var parameters = stackalloc byte[ParametersBytes];
        new Span<byte>(parameters, ParametersBytes).Clear();
        return syscall(Setup, 1, (nint)parameters, 0) >= 0;
    }

    private static CallTable? Table() =>
        RuntimeInformation.ProcessArchitecture switch
        {
            // socket, connect, bind, sendto, execve, execveat, ptrace, process_vm_readv, process_vm_writev, kill, tkill, and under the same
            // numbers everywhere pidfd_send_signal, io_uring_setup, io_uring_enter, io_uring_register, pidfd_open and pidfd_getfd. The
            // runtime itself needs tgkill, to stop its own threads.
            Architecture.X64 => new(
                0xC000003E,
                317,
                [41, 42, 49, 44, 59, 322, 101, 310, 311, 62, 200, 424, 425, 426, 427, 434, 438]
            ),
            Architecture.Arm64 => new(
                0xC00000B7,
                277,
                [198, 203, 200, 206, 221, 281, 117, 270, 271, 129, 130, 424, 425, 426, 427, 434, 438]
            ),
            _ => null,
        };

    private static Instruction[] Filter(CallTable table)
    {
        var calls = table.Forbidden;
        // Steps over what lies between a jump and the last instruction, which forbids.
        byte ToEnd(int after) => (byte)(calls.Length - after + 1);
        return
        [
            new(Load, 0, 0, Processor),
            new(JumpIfEqual, 0, (byte)(ToEnd(0) + 2), table.Processor),
            new(Load, 0, 0, CallNumber),
            new(JumpIfAtLeast, ToEnd(0), 0, OtherTable),
            .. calls.Select((call, i) => new Instruction(JumpIfEqual, ToEnd(i + 1), 0, call)),
            new(Return, 0, 0, Allow),
            new(Return, 0, 0, FailNotPermitted),
        ];
    }

    /// <param name="Processor">The kernel's word for the processor.</param>
    /// <param name="Seccomp">Number of the call that sets the filter.</param>
    /// <param name="Forbidden">Numbers of the calls that are forbidden.</param>
    private sealed record CallTable(uint Processor, nint Seccomp, uint[] Forbidden);

    [StructLayout(LayoutKind.Sequential)]
    private readonly record struct Instruction(ushort Code, byte IfTrue, byte IfFalse, uint Value);

    [StructLayout(LayoutKind.Sequential)]
    private struct FilterProgram
    {
        public ushort Length;
        public Instruction* First;
    }

    [LibraryImport("libc", SetLastError = true)]
    private static partial int prctl(int option, nuint a, nuint b, nuint c, nuint d);

    [LibraryImport("libc", SetLastError = true)]
    private static partial nint syscall(nint number, nint operation, nint flags, nint program);
}
