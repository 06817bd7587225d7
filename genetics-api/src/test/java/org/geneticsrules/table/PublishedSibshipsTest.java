package org.geneticsrules.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import org.geneticsrules.pedigree.Ascertainment.Probands;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/**
 * The 80 families with cystic fibrosis of Crow 1965, in Lange, <i>Mathematical and Statistical Methods for Genetic Analysis</i>, Table 2.3
 * (published), as a table of counted kits.
 */
class PublishedSibshipsTest {

    /** Siblings, affected, probands, families. */
    private static final int[][] FAMILIES = {
        {10, 3, 1, 1}, {9, 3, 1, 1}, {8, 4, 1, 1}, {7, 3, 2, 1}, {7, 3, 1, 1}, {7, 2, 1, 1}, {7, 1, 1, 1},
        {6, 2, 1, 1}, {6, 1, 1, 1}, {5, 3, 3, 1}, {5, 3, 2, 1}, {5, 2, 1, 5}, {5, 1, 1, 2}, {4, 3, 2, 1},
        {4, 3, 1, 2}, {4, 2, 1, 4}, {4, 1, 1, 6}, {3, 2, 2, 3}, {3, 2, 1, 3}, {3, 1, 1, 10}, {2, 2, 2, 2},
        {2, 2, 1, 4}, {2, 1, 1, 18}, {1, 1, 1, 9}
    };

    private static final Sighting AFFECTED = Sighting.of(Phenotype.of("fibrosis", "affected"));
    private static final Probability CHANCE = Probability.parse("0.359382"); // the published estimate

    private static String table() {
        StringBuilder table = new StringBuilder("count,litter,kits scored,ascertainment,ascertainment sign,"
                + "ascertainment chance,probands,trait: fibrosis\n");
        int number = 0;
        for (int[] one : FAMILIES) {
            for (int family = 0; family < one[3]; family++) {
                String litter = "sibship " + ++number;
                table.append(one[1] + "," + litter + "," + one[0] + ",probands,fibrosis: affected,0.359382," + one[2]
                        + ",affected\n");
                table.append(one[0] - one[1] + "," + litter + ",,,,,,healthy\n");
            }
        }
        return table.toString();
    }

    @Test
    void the_naive_share_is_that_of_the_book() {
        Pedigree read = PedigreeTable.of("crow", "1").read(table());
        assertEquals(80, read.litters().size());
        assertEquals(269, read.individuals().size());
        long affected = read.individuals().values().stream()
                .filter(one -> one.observations().get(0).looks().contains(AFFECTED.look()))
                .count();
        assertEquals(
                "0.460967", Probability.of(affected, read.individuals().size()).toDecimal(6));
        int probands = 0;
        for (Litter litter : read.litters().values()) {
            Probands some = (Probands) litter.ascertainment();
            assertEquals(new Probands(AFFECTED, CHANCE, some.count()), some);
            probands += some.count().orElseThrow();
        }
        assertEquals(90, probands);
        Litter single = read.litters().get("sibship 80");
        assertEquals(List.of("sibship 80/1"), single.kits(), "a row that counts none adds none");
        assertEquals(OptionalInt.of(1), single.scoredCount());
    }

    @Test
    void the_same_is_written_with_as_many_rows_as_there_are_kinds() {
        String written =
                PedigreeTable.writeCounted(PedigreeTable.of("crow", "1").read(table()));
        long mixed = 80 - 2 - 4 - 9; // the others have none who is healthy
        assertEquals(1 + 80 + mixed, written.lines().count());
        assertTrue(written.contains("1,sibship 80,1,probands,fibrosis: affected,0.359382,1,affected"), written);
    }
}
