package org.geneticsrules.answer.estimated;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.document.Reference;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Phenotype;

/** What goes with every answer from records: which they are, and the cautions on what was seen of anybody. */
final class Recorded {

    private Recorded() {}

    static void add(RecordedAnswers recorded, QuestionKind kind, Draft draft) {
        Pedigree pedigree = recorded.pedigree();
        Set<Phenotype> looks = new LinkedHashSet<>();
        for (Individual one : pedigree.individuals().values()) {
            one.observations().forEach(seen -> looks.addAll(seen.looks()));
        }
        List<Phenotype> all = new ArrayList<>(looks);
        draft.cautions = recorded.basis(List.of(), false)
                .answers()
                .cautions(Situation.of(kind.word()).with(Role.OFFSPRING, all).with(Role.ANIMAL, all));
        draft.model = Optional.of(recorded.model().reference());
        draft.pedigree = Optional.of(new Reference(pedigree.id(), pedigree.version(), Optional.empty()));
    }
}
