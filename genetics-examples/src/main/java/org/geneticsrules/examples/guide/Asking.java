package org.geneticsrules.examples.guide;

import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.geneticsrules.examples.Program;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.spi.Registry;
import org.geneticsrules.table.PedigreeTable;
import org.geneticsrules.trait.Catalogue;

/** The program's questions about the animals of an invented kennel. */
final class Asking {

    private Asking() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // spotless:off
        // sample
        String kennel = """
                id,sex,litter,dam,sire,trait: eye colour
                Sorrel,female,,,,pink
                Wicket,female,,,,dark
                Tarn,male,,,,dark
                Fennick,male,A,Wicket,Tarn,dark
                Pip,male,A,Wicket,Tarn,pink
                Bramble,male,B,Sorrel,Fennick,dark
                """;
        ask(out, kennel, "may-carry", "--animal", "Fennick", "--loci", "C");
        ask(out, kennel, "carrier-trail", "--animal", "Fennick", "--carries", "albino");
        ask(out, kennel, "how-sure", "--animal", "Fennick", "--carries", "albino", "--mate", "Sorrel", "--kits", "3");
        ask(out, kennel, "parentage", "--litter", "B", "--male", "Fennick", "--male", "Pip");
        ask(out, kennel, "next-litter", "--sire", "Fennick", "--dam", "Sorrel",
                "--traits", "eye colour", "--look", "eye colour: pink", "--kits", "2");
        ask(out, kennel, "registry");
        // end
        // spotless:on
        Catalogue traits = Registry.discover(plugin -> plugin.id().equals("geneticsrules.ferret"))
                .catalogues()
                .get(0);
        return Shown.of(read(kennel), traits);
    }

    /** Asks the program, and prints the first parts of the answer: the verdict and its tables. */
    private static void ask(PrintStream out, String kennel, String command, String... more) {
        Path file = written(kennel);
        List<String> line = new ArrayList<>(List.of(command));
        line.addAll(List.of(more));
        StringBuilder shown = new StringBuilder("> genetics " + command + " --pedigree kennel.csv");
        for (String word : more) {
            shown.append(' ').append(word.contains(" ") ? '"' + word + '"' : word);
        }
        out.println(shown.append(" --population \"few carriers\""));
        line.addAll(List.of("--pedigree", file.toString(), "--population", "few carriers"));
        StringWriter answer = new StringWriter();
        StringWriter problems = new StringWriter();
        Program.run(line.toArray(String[]::new), new PrintWriter(answer), new PrintWriter(problems));
        out.print(problems);
        out.println(answer.toString().split("\n(Why|What would change it)\n", 2)[0]);
    }

    private static Pedigree read(String kennel) {
        return PedigreeTable.of("sample.kennel", "1").read(kennel);
    }

    private static Path written(String kennel) {
        try {
            Path file = Files.createTempFile("kennel", ".csv");
            file.toFile().deleteOnExit();
            return Files.writeString(file, kennel);
        } catch (IOException e) {
            throw new UncheckedIOException("the kennel cannot be written", e);
        }
    }
}
