package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.pedigree.Pedigree;

/** Chocolate and sandy as steps of one series or as loci of their own. */
final class PaleLitters {

    private PaleLitters() {}

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
        // Invented: chocolate is recorded as lightened, sable as full.
        String alike = """
                id,count,sex,litter,dam,sire,weeks,moult,ascertainment,trait: dilution
                Hazel,,female,,,,60,2,,lightened
                Rowan,,male,,,,60,2,,lightened
                Fern,,female,,,,60,2,,sandy
                Ash,,male,,,,60,2,,sandy
                ,5,,chocolates,Hazel,Rowan,5,0,complete,lightened
                ,4,,sandies,Fern,Ash,5,0,complete,sandy
                """;
        List<Candidate> models = List.of(LitterVerdicts.ferret("common-practice"), LitterVerdicts.ferret("pale-apart"));
        Pedigree litters = LitterVerdicts.records(alike);
        for (String founders : List.of("few carriers", "many carriers")) {
            LitterVerdicts.ratios(out, LitterVerdicts.compare(models, litters, founders));
        }
        for (String coat : List.of("lightened", "full")) {
            out.println("-- and six kits of Fern and Rowan, all " + coat + ":");
            Pedigree more = LitterVerdicts.records(alike + ",6,,mixed,Fern,Rowan,5,0,complete," + coat + "\n");
            LitterVerdicts.verdict(out, models, more, "few carriers");
        }
        // end
        // spotless:on
        return Shown.of(KitRecords.model("pale-apart"));
    }
}
