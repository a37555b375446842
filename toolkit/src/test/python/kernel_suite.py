"""The Jupyter project's own tests of a kernel, run against the installed kernel "taketally".

Their waiting times (0.1 s for an output, 15 s for the first cell) are prolonged: they say how busy
the machine is, not whether the kernel is right. What must come, and in which order, is unchanged.
"""

import unittest

import jupyter_kernel_test


PATIENCE_SECONDS = 120


class TaketallyKernelTests(jupyter_kernel_test.KernelTests):
    kernel_name = "taketally"
    language_name = "java"
    file_extension = ".java"
    code_hello_world = 'System.out.println("hello, world");'
    code_stderr = 'System.err.println("oops");'
    completion_samples = [
        {"text": '"scion".toUp', "matches": {"toUpperCase("}},
        {"text": "Math.sqr", "matches": {"sqrt("}},
    ]
    complete_code_samples = ["1 + 1", "int x = 3;", "for (int i = 0; i < 3; i++) { }"]
    incomplete_code_samples = ["for (int i = 0;", "int twice(int n) {", "1 +"]
    invalid_code_samples = ["int = = 3;", "}", "else { }"]
    code_page_something = "Math?"
    code_generate_error = 'throw new IllegalStateException("on purpose");'
    code_execute_result = [
        {"code": "6 * 7", "result": "42"},
        {"code": '"sci" + "on"', "result": "scion"},
        {"code": 'html("<b>bud</b>")', "mime": "text/html", "result": "<b>bud</b>"},
    ]
    code_display_data = [
        {"code": 'display(svg("<svg/>"));', "mime": "image/svg+xml"},
        {"code": 'display(html("<i>x</i>"));', "mime": "text/html"},
    ]
    code_history_pattern = "6 * ?"
    supported_history_operations = ("tail", "range", "search")
    code_inspect_sample = "Math.max"
    code_clear_output = "clear();"

    def get_non_kernel_info_reply(self, timeout=None):
        return super().get_non_kernel_info_reply(timeout=PATIENCE_SECONDS)

    def execute_helper(self, *args, **kwargs):
        channel = self.kc.iopub_channel
        hasty = channel.get_msg
        channel.get_msg = lambda timeout=None: hasty(timeout=PATIENCE_SECONDS)
        try:
            return super().execute_helper(*args, **kwargs)
        finally:
            channel.get_msg = hasty


if __name__ == "__main__":
    unittest.main()
