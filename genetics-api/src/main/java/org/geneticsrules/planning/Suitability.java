package org.geneticsrules.planning;

import java.util.List;
import java.util.Optional;
import org.geneticsrules.pedigree.Fertility;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/** Why a step is not proposed, as far as the records say. */
final class Suitability {

    private Suitability() {}

    /** Why two animals are not mated, or have no kits. */
    static Optional<String> mating(Individual sire, Individual dam, Effort effort) {
        if (sire.id().equals(dam.id())) {
            return Optional.of(sire.id() + " cannot be both parents");
        }
        if (sire.sex().equals(Optional.of(Sex.FEMALE))) {
            return Optional.of(sire.id() + " is recorded as female and is no sire");
        }
        if (dam.sex().equals(Optional.of(Sex.MALE))) {
            return Optional.of(dam.id() + " is recorded as male and is no dam");
        }
        return effort.breeds() ? young(sire).or(() -> young(dam)) : Optional.empty();
    }

    private static Optional<String> young(Individual one) {
        Fertility fertility = one.fertility();
        return fertility.excludesYoung()
                ? Optional.of(one.id() + " is recorded as " + fertility.word() + " and has no more young")
                : Optional.empty();
    }

    /** Why traits cannot be told at a stage, or in a light. */
    static Optional<String> early(Catalogue catalogue, List<String> traits, LifeStage stage, Optional<String> light) {
        catalogue.check(stage);
        light.ifPresent(catalogue::checkLight);
        for (String trait : traits) {
            if (catalogue.judgeable(trait, stage) == Judgeable.NO) {
                return Optional.of(trait + " cannot be told so early, at " + stage);
            }
            if (light.isPresent() && catalogue.trait(trait).orElseThrow().judgeable(light) == Judgeable.NO) {
                return Optional.of(trait + " cannot be told in " + light.get());
            }
        }
        return Optional.empty();
    }
}
