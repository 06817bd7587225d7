package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.comparison.Candidate;

/** White with dark eyes, three ways, and what records favour which. */
final class WhiteLitters {

    private WhiteLitters() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand, one record per line.
        // spotless:off
        // sample
        // Invented: a litter of plain parents, and one of two silvers.
        String heading = "id,count,sex,litter,dam,sire,weeks,moult,ascertainment,trait: dilution,trait: eye colour,trait: white guard hairs\n";
        String plain = """
                Hazel,,female,,,,60,2,,full,dark,none
                Rowan,,male,,,,60,2,,full,dark,none
                ,6,,plain,Hazel,Rowan,5,0,complete,full,dark,
                ,2,,plain,,,5,0,,near-white,dark,
                """;
        String silver = """
                Fern,,female,,,,60,2,,full,dark,mostly coloured
                Ash,,male,,,,60,2,,full,dark,mostly coloured
                ,6,,silvers,Fern,Ash,5,0,complete,full,dark,
                ,2,,silvers,,,5,0,,near-white,dark,
                """;
        List<Candidate> models = List.of(LitterVerdicts.ferret("dark-eyed-white-is-pale-step"),
                LitterVerdicts.ferret("dark-eyed-white-is-marking"), LitterVerdicts.ferret("dark-eyed-white-is-silver"));
        for (String book : List.of(plain, silver)) {
            out.println("-- " + String.join(" and ", LitterVerdicts.records(heading + book).litters().keySet()) + ":");
            LitterVerdicts.verdict(out, models, LitterVerdicts.records(heading + book), "few carriers");
        }
        for (String founders : List.of("few carriers", "many carriers")) {
            out.println("-- founders with " + founders + ":");
            LitterVerdicts.ratios(out, LitterVerdicts.compare(models, LitterVerdicts.records(heading + plain + silver), founders));
        }
        out.println("-- by the colour of the eyes alone:");
        LitterVerdicts.verdict(out, models, LitterVerdicts.records(heading + plain), "few carriers", "eye colour");
        // end
        // spotless:on
        return Shown.of(KitRecords.model("dark-eyed-white-is-silver"));
    }
}
