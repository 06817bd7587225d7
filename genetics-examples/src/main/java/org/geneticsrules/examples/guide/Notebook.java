package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.spi.Registry;
import org.geneticsrules.table.PedigreeTable;
import org.geneticsrules.trait.Catalogue;

/** Litters as they stand in a notebook, and how they came to stand there. */
final class Notebook {

    private Notebook() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // spotless:off
        // sample
        String notebook = """
                id,count,sex,litter,dam,sire,kits born,kits scored,ascertainment,ascertainment sign,trait: eye colour
                Sorrel,,female,,,,,,,,dark
                Fennick,,male,,,,,,,,dark
                ,1,,spring,Sorrel,Fennick,5,4,at least one,eye colour: pink,pink
                ,3,,spring,,,,,,,dark
                ,2,,autumn,Sorrel,Fennick,3,3,complete,,dark
                Pip,,male,autumn,,,,,,,pink
                """;
        Pedigree litters = PedigreeTable.of("sample.notebook", "1").read(notebook);
        for (Litter litter : litters.litters().values()) {
            out.println(litter.id() + ": " + litter.kits() + ", " + litter.ascertainment());
        }
        out.println(PedigreeTable.writeCounted(litters));
        Probability pink = Probability.of(1, 4);
        for (int kits : new int[] {1, 2, 4, 8}) {
            Probability share = pink.dividedBy(pink.atLeastOnceIn(kits));
            out.println("of " + kits + ": " + share + " = " + share.toDecimal(4));
        }
        // end
        // spotless:on
        Catalogue traits = Registry.discover(plugin -> plugin.id().equals("geneticsrules.ferret"))
                .catalogues()
                .get(0);
        return Shown.of(litters, traits);
    }
}
