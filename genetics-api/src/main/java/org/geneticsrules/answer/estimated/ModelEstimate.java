package org.geneticsrules.answer.estimated;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.recorded.RecordBasis;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.estimation.Estimate;
import org.geneticsrules.estimation.LodScores;
import org.geneticsrules.estimation.ModelParameter;
import org.geneticsrules.estimation.PedigreeLikelihood;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/** Puts together what all records of a pedigree say of one number of the model. */
final class ModelEstimate {

    private final RecordedAnswers recorded;
    private final ModelNumber number;
    private final double level;
    private final ModelParameter parameter;
    private final Model model;

    ModelEstimate(RecordedAnswers recorded, ModelNumber number, double level) {
        this.recorded = recorded;
        this.number = number;
        this.level = level;
        this.model = recorded.model();
        this.parameter = number.of(model);
    }

    /** The likelihood, and the population that was taken where none was named. */
    private record Asked(PedigreeLikelihood likelihood, Optional<String> taken) {}

    EstimateAnswer answer() {
        Set<String> loci = number.loci(model);
        RecordBasis basis = recorded.basis(RecordedEstimates.traits(recorded, loci), true);
        Draft draft = new Draft("What is " + parameter.words() + ", by the records of " + recorded.pedigree() + "?");
        Asked asked = asked(basis.population(), draft);
        draft.given.add(Words.counted(recorded.pedigree().individuals().size(), "animal", "animals") + " and "
                + Words.counted(recorded.pedigree().litters().size(), "litter", "litters") + " of "
                + recorded.pedigree());
        Estimate estimate = asked.likelihood().estimate(level);
        draft.number(new EstimatedNumber(parameter.words(), estimate, Optional.empty()));
        if (!parameter.between().isEmpty() && !estimate.flat()) {
            LodScores scores = asked.likelihood().lodScores();
            scores(scores, estimate, asked.likelihood().phaseUnknown(), draft);
        } else if (!parameter.between().isEmpty()) {
            draft.notices.add(
                    "records that say something of linkage are of two or more young of a parent that is heterozygous at"
                            + " both loci, or of one if it is known which alleles lie together in that parent");
        }
        basis.assumptions().forEach(one -> draft.taken.put(one.id(), one));
        draft.assume(
                "other-numbers",
                "All other numbers of the model, and the frequencies among founders, are as stated.",
                "Where one of them is off, this one may make up for it.");
        asked.taken()
                .ifPresent(id -> draft.assume(
                        "population",
                        "Founders and unrecorded parents for whom no population is stated are as in population \"" + id
                                + "\".",
                        "Other frequencies give another estimate; name another population."));
        noticed(draft);
        draft.evidence = basis.evidence();
        draft.notices.addAll(basis.notices());
        Recorded.add(recorded, QuestionKind.LITTER, draft);
        return draft.answer();
    }

    private static void scores(LodScores scores, Estimate estimate, Map<String, List<String>> open, Draft draft) {
        Map<String, List<String>> told = new LinkedHashMap<>();
        open.forEach((family, parents) -> {
            if (!scores.uninformative().contains(family)) {
                told.put(family, parents);
            }
        });
        Scores.add(scores, estimate, told, draft);
        draft.few(
                scores.families().size() - scores.uninformative().size(),
                "set of relatives that says something",
                "sets of relatives that say something");
    }

    /** The named population, else none if none is needed, else the first of the model that will do. */
    private Asked asked(Optional<String> named, Draft draft) {
        if (named.isPresent()) {
            return new Asked(likelihood(named), Optional.empty());
        }
        try {
            return new Asked(likelihood(Optional.empty()), Optional.empty());
        } catch (ProblemsException e) {
            if (!isPopulationNeeded(e)) {
                throw e;
            }
            for (String id : model.populations().keySet()) {
                try {
                    return new Asked(likelihood(Optional.of(id)), Optional.of(id));
                } catch (ProblemsException other) {
                    if (!isPopulationNeeded(other)) {
                        throw other;
                    }
                    draft.notices.add("population \"" + id + "\" names no frequencies for all loci that matter here");
                }
            }
            throw e;
        }
    }

    private static boolean isPopulationNeeded(ProblemsException e) {
        return e.problems().stream().allMatch(problem -> problem.code().equals("population-needed"));
    }

    private PedigreeLikelihood likelihood(Optional<String> population) {
        try {
            return PedigreeLikelihood.of(parameter, recorded.pedigree(), questions -> {
                Inference asked = questions.with(recorded.confusions());
                return population.map(asked::from).orElse(asked);
            });
        } catch (IllegalArgumentException e) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "no-estimate",
                            "",
                            parameter.words() + " cannot be estimated: " + e.getMessage())
                    .expecting("records that fit one another under the model; see: registry"));
        }
    }

    /** The chance of records is not conditioned on how litters came to be recorded. */
    private void noticed(Draft draft) {
        List<String> noticed = new ArrayList<>();
        List<String> silent = new ArrayList<>();
        for (Litter litter : recorded.pedigree().litters().values()) {
            if (litter.ascertainment() instanceof Ascertainment.Unknown) {
                silent.add(litter.id());
            } else if (!(litter.ascertainment() instanceof Ascertainment.Complete)) {
                noticed.add(litter.id());
            }
        }
        if (!noticed.isEmpty()) {
            draft.notices.add("that litters " + RecordedEstimates.named(noticed)
                    + " were noticed for what they show is not allowed for here: chances of showing it are overestimated;"
                    + " recombination is touched by it less");
        }
        if (!silent.isEmpty()) {
            draft.assume(
                    "litters-complete",
                    "The litters of which nobody wrote down why they are recorded (" + RecordedEstimates.named(silent)
                            + ") would have been recorded whatever they showed.",
                    "Of litters that were noticed for a look, more show it than of others; say how each came to be recorded.");
        }
    }
}
