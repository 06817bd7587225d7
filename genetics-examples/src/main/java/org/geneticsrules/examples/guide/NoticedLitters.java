package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** Litters that stand in the book because of their white kits, and what is concluded where that is left out. */
final class NoticedLitters {

    private NoticedLitters() {}

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
        // Invented: three pairs, one dark and one white, with two dark and two white kits each.
        StringBuilder complete = new StringBuilder("id,count,sex,litter,dam,sire,ascertainment,ascertainment sign,trait: coat\n");
        for (int pair = 1; pair <= 3; pair++) {
            complete.append("""
                    dam %1$d,,female,,,,,,white
                    sire %1$d,,male,,,,,,dark
                    ,2,,litter %1$d,dam %1$d,sire %1$d,complete,,white
                    ,2,,litter %1$d,,,,,dark
                    """.formatted(pair));
        }
        List<Candidate> models = List.of(white("recessive", "C", "c"), white("dominant", "c", "C"));
        String noticed = complete.toString().replace(",complete,", ",at least one,coat: white");
        for (String book : List.of(complete.toString(), noticed)) {
            Pedigree litters = LitterVerdicts.records(book);
            out.println("-- " + litters.litters().values().iterator().next().ascertainment() + ":");
            LitterVerdicts.ratios(out, LitterVerdicts.compare(models, litters, "few"));
            LitterVerdicts.verdict(out, models, litters, "few");
        }
        // end
        // spotless:on
        return Shown.of(LitterVerdicts.records(noticed), TRAITS);
    }

    private static final Catalogue TRAITS = Catalogue.builder("sample.noticed.traits", "1.0.0")
            .trait("coat", "dark", "white")
            .build();

    /** White is as rare in both. */
    private static Candidate white(String name, String over, String under) {
        return Candidate.of(Model.builder("sample.white-" + name, "1.0.0", TRAITS)
                        .title("white " + name)
                        .locus(
                                "C",
                                c -> c.alleles("C", "c")
                                        .dominant(over, under)
                                        .shows("C", "dark")
                                        .shows("c", "white"))
                        .trait(
                                "coat",
                                coat -> coat.when(Condition.where("C", "white"), "white")
                                        .otherwise("dark"))
                        .population(
                                "few",
                                founders -> founders.frequency("C", "C", Probability.of(9, 10))
                                        .frequency("C", "c", Probability.of(1, 10)))
                        .build())
                .called(name);
    }
}
