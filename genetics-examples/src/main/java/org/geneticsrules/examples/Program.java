package org.geneticsrules.examples;

import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.util.concurrent.CancellationException;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import picocli.CommandLine;

/** The command line of the program. Stateless and thread-safe. */
public final class Program {

    private Program() {}

    /**
     * Runs one command.
     *
     * @param args the command line
     * @param out where answers go
     * @param err where problems go
     * @return one of {@link ExitCodes}
     */
    public static int run(String[] args, PrintWriter out, PrintWriter err) {
        int code = commandLine(out, err).execute(args);
        out.flush();
        err.flush();
        return code;
    }

    static CommandLine commandLine(PrintWriter out, PrintWriter err) {
        CommandLine line = new CommandLine(new RootCommand());
        line.setOut(out).setErr(err);
        line.setUsageHelpWidth(100);
        line.setUsageHelpAutoWidth(false);
        line.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
        line.setParameterExceptionHandler(Program::misused);
        line.setExecutionExceptionHandler((failure, command, parsed) -> failed(failure, command));
        return line;
    }

    private static int misused(CommandLine.ParameterException failure, String[] args) {
        CommandLine command = failure.getCommandLine();
        PrintWriter err = command.getErr();
        err.println("problem: " + plain(String.valueOf(failure.getMessage())));
        CommandLine.UnmatchedArgumentException.printSuggestions(failure, err);
        err.println("Help: " + command.getCommandSpec().qualifiedName() + " --help");
        return ExitCodes.NOT_UNDERSTOOD;
    }

    /** What is no number is told so, without the names that programmers have for numbers. */
    private static String plain(String message) {
        return message.replaceFirst(" is not an? (int|long)$", " is no whole number that can be used here")
                .replaceFirst(" is not a double$", " is no number");
    }

    private static int failed(Exception failure, CommandLine command) {
        PrintWriter err = command.getErr();
        if (failure instanceof InputException input) {
            err.print(input.text());
            return ExitCodes.NOT_UNDERSTOOD;
        }
        if (failure instanceof ProblemsException found) {
            err.print(ProblemText.of(found.problems()));
            return ExitCodes.NOT_UNDERSTOOD;
        }
        if (failure instanceof UncheckedIOException unreadable) {
            err.println("problem: " + ProblemText.sentence(unreadable));
            return ExitCodes.NOT_UNDERSTOOD;
        }
        if (failure instanceof TooLargeException large) {
            err.println("refused: " + large.getMessage());
            return ExitCodes.TOO_LARGE;
        }
        if (failure instanceof CancellationException) {
            err.println("stopped: " + failure.getMessage() + "; nothing was written");
            return ExitCodes.FAILED;
        }
        err.println("failed: " + failure + ". This is a fault of the program; please report the command line.");
        return ExitCodes.FAILED;
    }
}
