package org.geneticsrules.answer.estimated;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.estimation.ModelParameter;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.model.Viability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Sex;

/** A number of a model that can be asked for by name. */
public sealed interface ModelNumber {

    /**
     * The recombination fraction of two neighbouring loci.
     *
     * @param interval the two loci as the model writes them, such as {@code B-W}
     * @param sex the sex whose gametes are meant; both if none
     */
    record Recombining(String interval, Optional<Sex> sex) implements ModelNumber {
        @Override
        public ModelParameter of(Model model) {
            List<String> known = new ArrayList<>();
            for (LinkageGroup group : model.groups().values()) {
                if (group.recombination() instanceof Recombination.Fractions) {
                    if (group.intervals().contains(interval)) {
                        return sex.map(one -> ModelParameter.recombination(model, group.id(), interval, one))
                                .orElseGet(() -> ModelParameter.recombination(model, group.id(), interval));
                    }
                    known.addAll(group.intervals());
                }
            }
            throw unknown(model, "interval", interval, known);
        }

        @Override
        public Set<String> loci(Model model) {
            return ImmutableSet.copyOf(of(model).between());
        }
    }

    /**
     * The chance of a state in a case that leaves it to chance: a penetrance.
     *
     * @param trait id of the trait
     * @param rule id of the case; if none, the only one of the trait that leaves this state to chance
     * @param state the state
     */
    record Showing(String trait, Optional<String> rule, String state) implements ModelNumber {
        @Override
        public ModelParameter of(Model model) {
            return ModelParameter.chance(model, trait, found(model).id(), state);
        }

        private Case found(Model model) {
            TraitRule known = model.rules().get(trait);
            if (known == null) {
                throw unknown(model, "trait", trait, model.rules().keySet());
            }
            List<Case> chancy = known.allCases().stream()
                    .filter(one -> one.gives() instanceof CaseState.Chance chance
                            && chance.chances().outcomes().size() > 1)
                    .toList();
            List<Case> giving = chancy.stream()
                    .filter(one -> one.gives() instanceof CaseState.Chance chance
                            && chance.chances().outcomes().contains(state))
                    .toList();
            if (giving.isEmpty()) {
                throw unknown(
                        model,
                        "state left to chance in trait " + trait,
                        state,
                        chancy.stream()
                                .flatMap(one -> ((CaseState.Chance) one.gives()).chances().outcomes().stream())
                                .distinct()
                                .toList());
            }
            if (rule.isEmpty() && giving.size() > 1) {
                throw new ProblemsException(Problem.of(
                                Stage.MEANING,
                                "several-cases",
                                "",
                                "trait " + trait + " leaves " + state + " to chance in several cases")
                        .expecting("one of "
                                + String.join(
                                        ", ", giving.stream().map(Case::id).toList())));
            }
            return giving.stream()
                    .filter(one -> rule.isEmpty() || one.id().equals(rule.get()))
                    .findFirst()
                    .orElseThrow(() -> unknown(
                            model,
                            "case of trait " + trait + " that leaves " + state + " to chance",
                            rule.orElse(""),
                            giving.stream().map(Case::id).toList()));
        }

        @Override
        public Set<String> loci(Model model) {
            return CompiledModel.of(model).lociRead(List.of(trait));
        }
    }

    /**
     * The chance to be scored that a statement of viability gives.
     *
     * @param statement id of the statement
     */
    record Living(String statement) implements ModelNumber {
        @Override
        public ModelParameter of(Model model) {
            if (!model.viability().containsKey(statement)) {
                throw unknown(
                        model,
                        "statement of viability",
                        statement,
                        model.viability().keySet());
            }
            return ModelParameter.viability(model, statement);
        }

        @Override
        public Set<String> loci(Model model) {
            Viability found = model.viability().get(statement);
            return found == null ? Set.of() : Set.of(found.locus());
        }
    }

    /**
     * Returns the number of a model.
     *
     * @param model the model
     * @return the number
     * @throws ProblemsException if it has no such number; what it has is named
     */
    ModelParameter of(Model model);

    /**
     * Returns the loci that it concerns.
     *
     * @param model the model
     * @return ids of loci
     */
    Set<String> loci(Model model);

    private static ProblemsException unknown(Model model, String what, String name, Iterable<String> known) {
        List<String> names = new ArrayList<>();
        known.forEach(names::add);
        return new ProblemsException(
                names.isEmpty()
                        ? Problem.of(
                                Stage.REFERENCES,
                                "unknown-number",
                                "",
                                "model " + model + " has no " + what + " \"" + name + "\", nor any other")
                        : Problems.unknown(Stage.REFERENCES, "unknown-number", "", what, name, names));
    }
}
