package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.ParentageQuestion;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.probability.Probability;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says which males may have sired a recorded litter. */
@Command(
        name = "parentage",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Says which males may have sired a recorded litter or its kits, and how likely each is.",
        footer = {
            "",
            "Colour is weak evidence of parentage: it can exclude a male under the model, and proves none. A DNA",
            "parentage test through a veterinarian settles it.",
            "",
            "Could the recorded sire of litter \"2026/3\" be its sire?",
            "  genetics parentage --pedigree kennel.csv --litter \"2026/3\"",
            "Two hobs had access; who sired which kit?",
            "  genetics parentage --pedigree kennel.csv --litter \"2026/3\" --male \"Tarn=2/3\" --male \"Fennick=1/3\" \\",
            "      --each-kit"
        })
final class ParentageCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private PedigreeChoice pedigree;

    @Mixin
    private OutputChoice output;

    @Option(names = "--litter", paramLabel = "ID", required = true, description = "The litter, by its id.")
    private String litter = "";

    @Option(
            names = "--male",
            paramLabel = "ID[=SHARE]",
            description = {
                "A male who may be the sire, with how likely he was before anything was",
                "looked at; once for each. Shares sum to 1; without any, all are alike.",
                "Default: the males that are recorded."
            })
    private List<String> males = new ArrayList<>();

    @Option(
            names = "--unrecorded",
            paramLabel = "SHARE",
            description = "A male who is not recorded may be the sire too, with this share.")
    private @Nullable String unrecorded;

    @Option(
            names = "--each-kit",
            description = "Each kit may have a sire of its own. Default: one sire for the litter.")
    private boolean eachKit;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        RecordedAnswers recorded = pedigree.about(answers);
        ParentageQuestion question = ParentageQuestion.of(
                PedigreeChoice.litter(recorded, "--litter", litter).id());
        if (!males.isEmpty() || unrecorded != null) {
            question = question.among(candidates(recorded));
        } else if (eachKit) {
            throw new InputException("problem: --each-kit needs the males, one --male for each\n");
        }
        return output.print(
                recorded.parentage(question),
                answers.compiled().model(),
                spec.commandLine().getOut());
    }

    private Paternity candidates(RecordedAnswers recorded) {
        boolean shared = unrecorded != null || males.stream().anyMatch(male -> share(recorded, male) != null);
        List<Paternity.Candidate> each = new ArrayList<>();
        for (String male : males) {
            String share = share(recorded, male);
            if (shared && share == null) {
                throw new InputException("problem: --male " + male
                        + ": no share is stated, but others have one; write it behind an equals sign, as in --male \""
                        + male
                        + "=1/2\"\n");
            }
            String id = share == null ? male : male.substring(0, male.length() - share.length() - 1);
            each.add(Paternity.Candidate.of(
                    PedigreeChoice.animal(recorded, "--male", id.strip()),
                    share == null ? Probability.of(1, males.size()) : Inputs.chance("--male", share)));
        }
        String other = unrecorded;
        if (other != null) {
            each.add(new Paternity.Candidate(Optional.empty(), Optional.empty(), Inputs.chance("--unrecorded", other)));
        }
        try {
            return new Paternity.Candidates(each, eachKit);
        } catch (IllegalArgumentException e) {
            throw new InputException("problem: " + e.getMessage() + "\n");
        }
    }

    /** What stands behind the last equals sign, unless that is a part of an id. */
    private static @Nullable String share(RecordedAnswers recorded, String male) {
        int at = male.lastIndexOf('=');
        return at < 0 || recorded.pedigree().individuals().containsKey(male) ? null : male.substring(at + 1);
    }
}
