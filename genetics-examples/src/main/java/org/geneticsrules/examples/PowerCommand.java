package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.compared.PowerAnswer;
import org.geneticsrules.answer.compared.PowerAnswers;
import org.geneticsrules.answer.compared.PowerQuestion;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.planning.Power;
import org.geneticsrules.simulation.LitterPlan;
import org.geneticsrules.simulation.TooRareException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says how often litters of a plan would tell beliefs about inheritance apart. */
@Command(
        name = "power",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Says how often records of so many litters would tell the model from its rivals, if it is true.",
            "It tells too how often a wrong model would be ahead, and how many litters it takes. The litters are "
                    + "drawn; none is born."
        },
        footer = {
            "",
            "Nothing here says that a mating is advisable. Records of litters that there are come first.",
            "",
            "Would twenty litters of tested carriers of albino tell whether their kits are lost?",
            "  genetics power --sire \"C/c\" --dam \"C/c\" --population \"few carriers\" --parents-tested C \\",
            "      --couples 20 --kits-seen \"eye colour @ week 8\" --rival my-hypothesis.json",
            "If the rival is true instead: choose it with --model, --file or --patch, and this one as --rival.",
            "",
            "Exits with 1 where no mating can tell the models apart."
        })
final class PowerCommand implements Callable<Integer> {

    private static final int FEWEST_SETS = 20;

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Option(
            names = "--rival",
            paramLabel = "MODEL",
            description = "A model or a patch to be told from it: the id of one of a plug-in, "
                    + "or a file. May be repeated. Default: the rivals of the plug-in that "
                    + "speak of all that is written down.")
    private List<String> rivals = new ArrayList<>();

    @Mixin
    private DrawingOptions options;

    @Option(
            names = "--couples",
            paramLabel = "N",
            defaultValue = "1",
            description = "How many couples, unrelated to one another. Default: 1.")
    private int couples = 1;

    @Option(
            names = "--litters",
            paramLabel = "N",
            defaultValue = "1",
            description = "How many litters each couple has. Default: 1.")
    private int litters = 1;

    @Option(
            names = "--sets",
            paramLabel = "N",
            description = "How many sets of such litters are drawn, 20 or more. Default: " + Power.USUAL_SETS + ".")
    private int sets = Power.USUAL_SETS;

    @Option(
            names = "--progress",
            paramLabel = "WHEN",
            defaultValue = "auto",
            description = "Whether to show how far it has come: auto (on a terminal, default), always or never.")
    private String progress = "auto";

    @Mixin
    private OutputChoice output;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        String when = Inputs.choice("--progress", progress, "auto", "always", "never");
        int number = Inputs.count("--sets", sets, FEWEST_SETS, Power.MOST_SETS);
        int pairs = Inputs.count("--couples", couples, 1, LitterPlan.MOST);
        int each = Inputs.count("--litters", litters, 1, LitterPlan.MOST / pairs);
        ModelChoice.once(rivals);
        Answers answers = choice.answers();
        DrawingOptions.Plan asked = options.read(answers.compiled());
        List<Candidate> others =
                rivals.stream().map(rival -> choice.held(rival).candidate()).toList();
        LitterPlan plan = new LitterPlan(asked.sires(), asked.dams(), pairs, each, asked.size(), asked.counted());
        PowerQuestion question = new PowerQuestion(asked.sire(), asked.dam(), asked.drawing(), plan, number);
        Progress bar = ProgressBar.of("drawing", spec.commandLine().getErr(), when);
        PowerAnswers power = PowerAnswers.of(answers).watched(done -> bar.at(done, number));
        PowerAnswer answer;
        try {
            answer = others.isEmpty() ? power.power(question) : power.power(question, others);
        } catch (TooRareException e) {
            throw new InputException("problem: " + e.getMessage() + "\n");
        }
        return output.print(
                answer, answers.compiled().model(), spec.commandLine().getOut());
    }
}
