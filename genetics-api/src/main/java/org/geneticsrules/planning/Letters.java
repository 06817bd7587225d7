package org.geneticsrules.planning;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.comparison.Shown;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * All that one look at one animal may record, in the order of the catalogue.
 *
 * @param all what may be recorded, with the sex where animals are told apart by it
 * @param stage when the look is
 * @param light in which light
 */
record Letters(List<Shown> all, LifeStage stage, Optional<String> light) {

    /** More looks than these are not compared. */
    private static final int MOST = 512;

    Letters {
        all = ImmutableList.copyOf(all);
    }

    static Letters of(
            Catalogue catalogue, List<String> traits, LifeStage stage, Optional<String> light, boolean bySex) {
        List<Map<String, String>> looks = new ArrayList<>(List.of(Map.of()));
        for (String trait : traits) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> one : looks) {
                for (String state : catalogue.trait(trait).orElseThrow().states()) {
                    Map<String, String> more = new LinkedHashMap<>(one);
                    more.put(trait, state);
                    longer.add(more);
                }
            }
            looks = longer;
            if (looks.size() > MOST) {
                throw new TooLargeException("looks of one animal", looks.size(), MOST, "ask about fewer traits");
            }
        }
        List<Shown> all = new ArrayList<>();
        for (Map<String, String> look : looks) {
            if (bySex) {
                all.add(new Shown(Optional.of(Sex.FEMALE), Phenotype.from(look)));
                all.add(new Shown(Optional.of(Sex.MALE), Phenotype.from(look)));
            } else {
                all.add(new Shown(Optional.empty(), Phenotype.from(look)));
            }
        }
        return new Letters(all, stage, light);
    }

    int size() {
        return all.size();
    }

    /** An animal with a look more. */
    Individual showing(Individual one, int letter) {
        Shown shown = all.get(letter);
        return shown.sex()
                .map(one::with)
                .orElse(one)
                .with(new Observation(
                        Optional.empty(), stage, Set.of(shown.look()), light, Optional.empty(), Optional.empty()));
    }
}
